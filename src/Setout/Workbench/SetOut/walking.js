// The drawing is one stop of the Tab key: arrows go to what stands beside, Enter chooses it or opens its figure, Escape goes outwards.
import { show, sizeUrl } from './workbench.js';
import { holdChosen, pushChosen } from './gripping.js';
import { speak } from './swapping.js';
import { directions, waysOf } from './ways.js';

// Where one is: the key, and which one of those that share it. Something may be drawn in several places.
let at = null;
const room = () => document.getElementById('room');
const shown = () => [...(room()?.querySelectorAll('[data-key]') ?? [])].filter(g => g.getAttribute('aria-label') && g.getBoundingClientRect().width > 0);
const alike = key => shown().filter(g => g.dataset.key === key);
const walked = () => {
  const all = at ? alike(at.key) : [];
  return all[at?.nth] ?? all.at(-1);
};

// What is drawn in several places under one name is counted: else it would be said twice as if nothing had happened.
function told(group) {
  const label = group.getAttribute('aria-label'), all = shown().filter(g => g.getAttribute('aria-label') === label);
  return all.length > 1 ? `${label}, ${all.indexOf(group) + 1} of ${all.length}` : label;
}

function mark(group) {
  for (const old of room().querySelectorAll('.is-walked')) old.classList.remove('is-walked');
  at = group ? { key: group.dataset.key, nth: alike(group.dataset.key).indexOf(group) } : null;
  group?.classList.add('is-walked');
  if (group) speak(told(group));
}

const here = () => walked() ?? shown().find(g => g.classList.contains('is-chosen'));

// Of each drawing once: a redrawn one is another.
const known = new WeakMap();
function waysThrough(all) {
  const svg = all[0].ownerSVGElement;
  if (!known.has(svg)) {
    const sizes = new Set(JSON.parse(room().dataset.sizes).map(s => s.key)), scale = svg.getScreenCTM().a;
    known.set(svg, waysOf(all.map(group => {
      const box = group.getBoundingClientRect();
      return { left: box.left / scale, right: box.right / scale, top: box.top / scale, bottom: box.bottom / scale, isSize: sizes.has(group.dataset.key) };
    })));
  }
  return known.get(svg);
}

const further = { ArrowLeft: 'to the left', ArrowRight: 'to the right', ArrowUp: 'above', ArrowDown: 'below' };
function step(key) {
  const all = shown(), from = here();
  if (all.length === 0) return;
  if (!from) {
    mark(all[0]);
    return;
  }
  const to = all[waysThrough(all)[all.indexOf(from)][key]];
  if (to) mark(to);
  else speak(`nothing further ${further[key]}`);
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
    step(key);
    return;
  }
  const owner = group?.dataset.key.split('#')[0] ?? chosen;
  if (chosen !== owner) {
    const url = sizeUrl(owner);
    url.hash = '';
    await show(url, true, true);
    room()?.focus({ preventScroll: true });
  }
  pushChosen(key, walked()?.getBoundingClientRect());
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
  const isWay = event.key in directions;
  if (isWay && event.shiftKey) push(event.key);
  else if (isWay) step(event.key);
  else if (event.key in turns) turn(turns[event.key]);
  else if (event.key === 'Enter' && here()) {
    const key = here().dataset.key, sizes = JSON.parse(room().dataset.sizes);
    if (sizes.some(s => s.key.split('#')[0] === key.split('#')[0])) document.dispatchEvent(new CustomEvent('setout:open-size', { detail: key }));
    else {
      const url = sizeUrl(key.split('#')[0]);
      url.hash = '';
      show(url, true, true).then(() => {
        // A divider is nudged by arrows at once; it says itself where it stands.
        if (holdChosen(walked()?.getBoundingClientRect())) return;
        room()?.focus({ preventScroll: true });
        speak(document.querySelector('#working .working-title')?.textContent.replace(/\s+/g, ' ').trim() ?? '');
      });
    }
  } else if (event.key !== 'Escape' || !outwards()) return;
  event.preventDefault();
});
document.addEventListener('setout:drawn', () => {
  walked()?.classList.add('is-walked');
});
