// Makes the drawing answer to the pointer and swaps the working without loading the whole page. Every link works without it.
import { hasSingleKeys, speak, swap } from './swapping.js';

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

let latest = 0;
export async function show(url, remember, isQuiet = false, isKept = false) {
  const turn = ++latest;
  let text;
  try {
    const answer = await fetch(url, { headers: { Accept: 'text/html' } });
    if (!answer.ok) throw new Error(answer.statusText);
    text = await answer.text();
  } catch {
    location.assign(url);
    return;
  }
  if (turn !== latest) return;
  const fresh = new DOMParser().parseFromString(text, 'text/html');
  const isHeld = swap(fresh);
  if (remember) history.pushState(null, '', url);
  document.dispatchEvent(new Event('setout:swapped'));
  if (isQuiet) return;
  const working = document.getElementById('working');
  // A link leads to the working, and one that is still there keeps the focus, so that Tab goes on from it. What is chosen on the drawing is told under it: the page stays.
  if (!isHeld && remember) working?.focus({ preventScroll: true });
  const box = working?.getBoundingClientRect();
  if (remember && !isKept && box && (box.top < 0 || box.top > innerHeight * 0.75)) working.scrollIntoView({ block: 'start' });
  speak(working?.querySelector('.working-title')?.textContent.replace(/\s+/g, ' ').trim() ?? '');
}

document.addEventListener('click', event => {
  if (event.defaultPrevented || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey) return;
  const link = event.target.closest('a[href]');
  if (link) {
    const url = new URL(link.href);
    if (!isSizeOfThisPage(url) || !document.getElementById('margin')) return;
    event.preventDefault();
    // The view that is looked at stays.
    const view = new URL(location.href).searchParams.get('view');
    if (view && !url.searchParams.has('view') && !link.closest('.views')) url.searchParams.set('view', view);
    show(url, true);
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
