// Makes the drawing answer to the pointer and swaps the working without loading the whole page. Every link works without it.
import { give, hasSingleKeys, shown, speak, swap } from './swapping.js';

const page = document.documentElement;
page.classList.add('has-script');

for (const button of document.querySelectorAll('[data-print]')) {
  button.hidden = false;
  button.addEventListener('click', () => window.print());
}

// Which keys do what, where one looks for it.
const keys = document.getElementById('keys');
for (const button of document.querySelectorAll('[data-keys]')) {
  button.hidden = false;
  button.addEventListener('click', () => keys?.showModal());
}
document.addEventListener('keydown', event => {
  if (!hasSingleKeys() || event.key !== '?' || event.ctrlKey || event.metaKey || event.altKey || event.target.closest?.('input, textarea, select, dialog')) return;
  keys?.showModal();
});

export function sizeUrl(key) {
  const url = new URL(location.href);
  url.searchParams.set('size', key);
  url.hash = 'working';
  return url;
}

function isSizeOfThisPage(url) {
  return url.origin === location.origin && url.pathname === location.pathname && url.searchParams.has('size');
}

const standpoint = ['turn', 'tip', 'apart'];

/** An address of this page with the view that is looked at now, from where it is looked at now: what is chosen turns nothing. */
export function seenAsNow(url) {
  const now = new URL(location.href).searchParams, view = now.get('view');
  if (!view || url.pathname !== location.pathname) return url;
  if (!url.searchParams.has('view')) url.searchParams.set('view', view);
  if (url.searchParams.get('view') === view) for (const word of standpoint) if (now.has(word)) url.searchParams.set(word, now.get(word));
  return url;
}

let latest = 0;
// A link takes the keyboard along to the place that it names, as it would by loading the page. A tree is gone through by arrows: one stays in it.
const leads = (link, url) => link !== null && url.hash === '#working' && !link.closest('[role="tree"]');
export async function show(url, remember, isQuiet = false, isKept = false, from = null) {
  const turn = ++latest;
  let text;
  try {
    // What was changed meanwhile is not there yet in a page that was asked for before.
    for (let before = null; before !== shown(); ) {
      before = shown();
      const answer = await fetch(url, { headers: { Accept: 'text/html' } });
      if (!answer.ok) throw new Error(answer.statusText);
      text = await answer.text();
      if (turn !== latest) return;
    }
  } catch {
    location.assign(url);
    return;
  }
  const fresh = new DOMParser().parseFromString(text, 'text/html');
  const isHeld = swap(fresh);
  if (remember) history.pushState(null, '', url);
  document.dispatchEvent(new Event('setout:swapped'));
  if (isQuiet) return;
  const working = document.getElementById('working');
  // What is chosen on the drawing is told under it: the page stays.
  if (remember && (!isHeld || leads(from, url))) working?.focus({ preventScroll: true });
  const box = working?.getBoundingClientRect();
  if (remember && !isKept && box && (box.top < 0 || box.top > innerHeight * 0.75)) working.scrollIntoView({ block: 'start' });
  speak(working?.querySelector('.working-title')?.textContent.replace(/\s+/g, ' ').trim() ?? '');
}

document.addEventListener('click', event => {
  if (event.defaultPrevented || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
  const link = event.target.closest('a[href]');
  if (link) {
    const url = new URL(link.href);
    if (url.origin !== location.origin || url.pathname !== location.pathname) return;
    // To a place of what is shown already: the keyboard goes along.
    const id = url.search === location.search ? decodeURIComponent(url.hash.slice(1)) : '';
    if (id && document.getElementById(id)) {
      setTimeout(() => give(document.getElementById(id)), 0);
      return;
    }
    if (!isSizeOfThisPage(url) || !document.getElementById('margin')) return;
    event.preventDefault();
    show(link.closest('.views') ? url : seenAsNow(url), true, false, false, link);
    return;
  }
  // A gap leads to its working, as its line in the list below the drawing does.
  const gap = event.target.closest('#gaps [data-key]');
  if (gap && getSelection().isCollapsed) document.querySelector(`[data-gap="${CSS.escape(gap.dataset.key)}"]`)?.click();
  const group = event.target.closest('#drawing [data-key]');
  if (group && getSelection().isCollapsed) show(sizeUrl(group.dataset.key.split('#')[0]), true, false, true);
});

window.addEventListener('popstate', () => {
  if (document.getElementById('margin')) show(new URL(location.href), false);
});

// Pointing at a line of the outline shows its place on the drawing, and the other way round.
function point(key, on) {
  for (const group of document.querySelectorAll('#drawing [data-key]'))
    if (group.dataset.key.split('#')[0] === key) group.classList.toggle('is-pointed', on);
}
for (const [kind, on] of [['mouseover', true], ['mouseout', false], ['focusin', true], ['focusout', false]]) {
  document.addEventListener(kind, event => {
    const line = event.target.closest?.('[data-outline], [data-part]');
    if (line) point(line.dataset.outline ?? line.dataset.part, on);
  });
}
