// The drawing is one stop of the Tab key: arrows go to what stands beside, Enter chooses it or opens its figure, Escape goes outwards.
import { show, sizeUrl } from './workbench.js';
import { pushChosen } from './gripping.js';
import { speak } from './swapping.js';

let at = null;
const room = () => document.getElementById('room');
const shown = () => [...(room()?.querySelectorAll('[data-key]') ?? [])].filter(g => g.getAttribute('aria-label') && g.getBoundingClientRect().width > 0);

function mark(group) {
  for (const old of room().querySelectorAll('.is-walked')) old.classList.remove('is-walked');
  at = group?.dataset.key ?? null;
  group?.classList.add('is-walked');
  if (group) speak(group.getAttribute('aria-label'));
}

const apart = (a0, a1, b0, b1) => Math.max(0, b0 - a1, a0 - b1);
const here = () => shown().find(g => g.dataset.key === at) ?? shown().find(g => g.classList.contains('is-chosen'));

function step(dx, dy) {
  const from = here();
  if (!from) {
    mark(shown()[0]);
    return;
  }
  const box = from.getBoundingClientRect(), sizes = new Set(JSON.parse(room().dataset.sizes).map(s => s.key)), isSize = group => sizes.has(group.dataset.key);
  let best = null, least = Infinity;
  for (const group of shown()) {
    if (group === from) continue;
    const to = group.getBoundingClientRect();
    // What reaches farther that way than this does; the nearest, and rather straight on than aside.
    const along = dx > 0 ? to.right - box.right : dx < 0 ? box.left - to.left : dy > 0 ? to.bottom - box.bottom : box.top - to.top;
    const aside = dx ? apart(box.top, box.bottom, to.top, to.bottom) : apart(box.left, box.right, to.left, to.right);
    if (along < 1 || aside > along * 2) continue;
    // From a member one goes to the member or opening beside it before one goes to a dimension; along dimensions from one to the next.
    const far = (along + aside * 3) * (isSize(group) === isSize(from) ? 1 : isSize(group) ? 3 : 1.5);
    if (far < least) [best, least] = [group, far];
  }
  if (best) mark(best);
  else speak(`nothing further ${dx > 0 ? 'to the right' : dx < 0 ? 'to the left' : dy > 0 ? 'below' : 'above'}`);
}

// All things in turn: what no arrow leads to is reached so.
function turn(by) {
  const all = shown(), from = all.indexOf(here());
  const to = by === 'first' ? 0 : by === 'last' ? all.length - 1 : from < 0 ? 0 : (from + by + all.length) % all.length;
  if (all[to]) mark(all[to]);
}
const turns = { PageDown: 1, PageUp: -1, Home: 'first', End: 'last' };

// What is not chosen yet is chosen first: then it has its handle, or there is a reason why it has none.
async function push(key) {
  const chosen = new URL(location.href).searchParams.get('size'), group = here();
  if (!group && !chosen) {
    step(0, 0);
    return;
  }
  const owner = group?.dataset.key.split('#')[0] ?? chosen;
  if (chosen !== owner) {
    const url = sizeUrl(owner);
    url.hash = '';
    await show(url, true, true);
    room()?.focus({ preventScroll: true });
  }
  pushChosen(key);
}

function outwards() {
  const from = here();
  if (!from) return false;
  const box = from.getBoundingClientRect();
  const round = shown().filter(g => g !== from).map(g => [g, g.getBoundingClientRect()])
    .filter(([, b]) => b.left <= box.left && b.right >= box.right && b.top <= box.top && b.bottom >= box.bottom && b.width * b.height > box.width * box.height)
    .sort(([, a], [, b]) => a.width * a.height - b.width * b.height)[0]?.[0];
  mark(round ?? null);
  return true;
}

document.addEventListener('keydown', event => {
  if (event.target !== room() || event.ctrlKey || event.metaKey || event.altKey) return;
  const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
  if (way && event.shiftKey) push(event.key);
  else if (way) step(...way);
  else if (event.key in turns) turn(turns[event.key]);
  else if (event.key === 'Enter' && here()) {
    const key = here().dataset.key, sizes = JSON.parse(room().dataset.sizes);
    if (sizes.some(s => s.key.split('#')[0] === key.split('#')[0])) document.dispatchEvent(new CustomEvent('setout:open-size', { detail: key }));
    else {
      const url = sizeUrl(key.split('#')[0]);
      url.hash = '';
      show(url, true, true).then(() => {
        room()?.focus({ preventScroll: true });
        speak(document.querySelector('#working .working-title')?.textContent.replace(/\s+/g, ' ').trim() ?? '');
      });
    }
  } else if (event.key !== 'Escape' || !outwards()) return;
  event.preventDefault();
});
document.addEventListener('setout:drawn', () => {
  const group = at && shown().find(g => g.dataset.key === at);
  if (group) group.classList.add('is-walked');
});
