// Follows links within a page without loading it anew, so that one stays at one's place: things of the shop, steps at the saw. Every link works without it.
import { shown, swap } from './swapping.js';

let latest = 0;
document.addEventListener('click', async event => {
  const link = event.target.closest?.('a[data-stay]');
  if (!link || event.ctrlKey || event.metaKey || event.shiftKey || event.button !== 0) return;
  event.preventDefault();
  const turn = ++latest;
  let text;
  try {
    // The last link that was pressed is the one that is meant; and what was changed meanwhile is not there yet in a page that was asked for before.
    for (let before = null; before !== shown(); ) {
      before = shown();
      const answer = await fetch(link.href, { headers: { Accept: 'text/html' } });
      if (!answer.ok) throw new Error(answer.statusText);
      text = await answer.text();
      if (turn !== latest) return;
    }
  } catch {
    location.assign(link.href);
    return;
  }
  const fresh = new DOMParser().parseFromString(text, 'text/html'), at = link.getAttribute('href');
  swap(fresh);
  history.pushState(null, '', link.href);
  const chosen = document.getElementById(new URL(link.href).hash.slice(1)), box = chosen?.getBoundingClientRect();
  if (box && (box.bottom < 0 || box.top > innerHeight / 2)) chosen.scrollIntoView({ block: 'start' });
  // By the keyboard one goes on in the form; a pointer stays where it is.
  const first = chosen?.querySelector('details[open] input[type="text"], details[open] select') ?? chosen?.querySelector('summary, form button, a');
  if (event.detail === 0) first?.focus({ preventScroll: true });
  else document.querySelector(`a[data-stay][href="${CSS.escape(at)}"]`)?.focus({ preventScroll: true });
});

// What is refused may be about what is folded away, where no field is to blame.
document.addEventListener('setout:refused', event => {
  const fold = event.target.querySelector?.('[aria-invalid]') ? null : event.target.querySelector?.('.more-fields');
  if (fold) fold.open = true;
});
