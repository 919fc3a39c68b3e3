// Looking closer at the drawing. What is looked at is kept as a part of the paper, so that no edit and no redrawing changes it.
import { hasSingleKeys } from './swapping.js';
const most = 8, slip = { touch: 10 }, steady = 4;
let view = { zoom: 1, x: 0, y: 0 };
const fingers = new Map();
let pinch = null, panning = null;

const room = () => document.getElementById('room') ?? document.querySelector('[data-turning]');
const turns = () => room()?.dataset.turning !== undefined;
const papers = () => [...(room()?.querySelectorAll('svg.so-drawing') ?? [])];

function apply() {
  for (const svg of papers()) {
    svg.dataset.whole ??= svg.getAttribute('viewBox');
    const [, , width, height] = svg.dataset.whole.split(' ').map(Number);
    svg.setAttribute('viewBox', `${view.x * width} ${view.y * height} ${width / view.zoom} ${height / view.zoom}`);
  }
  room()?.classList.toggle('is-close', view.zoom > 1);
  const fit = document.querySelector('[data-zoom="fit"]');
  if (fit) fit.disabled = view.zoom === 1;
}

function set(zoom, x, y) {
  const z = Math.max(1, Math.min(most, zoom)), free = 1 - 1 / z;
  view = { zoom: z, x: Math.max(0, Math.min(free, x)), y: Math.max(0, Math.min(free, y)) };
  apply();
  document.dispatchEvent(new Event('setout:drawn'));
}

// What lies under the pointer stays there.
function zoomAt(by, clientX, clientY) {
  const box = papers().map(s => s.getBoundingClientRect()).find(b => b.width > 0);
  if (!box) return;
  const [u, v] = [(clientX - box.left) / box.width, (clientY - box.top) / box.height];
  const zoom = Math.max(1, Math.min(most, view.zoom * by));
  set(zoom, view.x + u / view.zoom - u / zoom, view.y + v / view.zoom - v / zoom);
}
function zoomMiddle(by) {
  const box = papers().map(s => s.getBoundingClientRect()).find(b => b.width > 0);
  if (box) zoomAt(by, box.left + box.width / 2, box.top + box.height / 2);
}

function moveBy(dx, dy) {
  const box = papers().map(s => s.getBoundingClientRect()).find(b => b.width > 0);
  if (box && view.zoom > 1) set(view.zoom, view.x - dx / box.width / view.zoom, view.y - dy / box.height / view.zoom);
}

// Two fingers are ours from the first move on: the page would scroll with them. One finger scrolls the page, as long as all of the drawing is seen.
const ours = event => { if (event.touches.length > 1 && event.cancelable) event.preventDefault(); };
const watched = new WeakSet();
function watch() {
  const there = room();
  if (!there || watched.has(there)) return;
  watched.add(there);
  for (const kind of ['touchstart', 'touchmove']) there.addEventListener(kind, ours, { passive: false });
}

document.addEventListener('wheel', event => {
  if (!room()?.contains(event.target) || !(event.ctrlKey || event.metaKey)) return;
  event.preventDefault();
  zoomAt(Math.exp(-event.deltaY / 300), event.clientX, event.clientY);
}, { passive: false });

document.addEventListener('click', event => {
  const button = event.target.closest?.('[data-zoom]');
  if (!button) return;
  if (button.dataset.zoom === 'fit') set(1, 0, 0);
  else zoomMiddle(button.dataset.zoom === 'in' ? 1.5 : 1 / 1.5);
});

document.addEventListener('keydown', event => {
  if (event.target !== room() || turns() || !hasSingleKeys() || event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.key === '+' || event.key === '=') zoomMiddle(1.5);
  else if (event.key === '-') zoomMiddle(1 / 1.5);
  else if (event.key === '0') set(1, 0, 0);
  else return;
  event.preventDefault();
});

document.addEventListener('pointerdown', event => {
  if (!room()?.contains(event.target)) return;
  if (event.pointerType === 'touch') {
    fingers.set(event.pointerId, [event.clientX, event.clientY]);
    if (fingers.size === 2) {
      const [a, b] = [...fingers.values()];
      pinch = { far: Math.hypot(a[0] - b[0], a[1] - b[1]), x: (a[0] + b[0]) / 2, y: (a[1] + b[1]) / 2 };
    }
    if (fingers.size > 1) {
      panning = null;
      return;
    }
  }
  // A divider under the pointer is moved instead.
  if (view.zoom > 1 && event.button <= 1 && !event.defaultPrevented && (!turns() || event.shiftKey || event.button === 1)) panning = { id: event.pointerId, x: event.clientX, y: event.clientY, moved: false };
});
document.addEventListener('pointermove', event => {
  if (fingers.has(event.pointerId)) fingers.set(event.pointerId, [event.clientX, event.clientY]);
  if (pinch && fingers.size === 2) {
    const [a, b] = [...fingers.values()], far = Math.hypot(a[0] - b[0], a[1] - b[1]);
    const [x, y] = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    zoomAt(far / pinch.far, x, y);
    moveBy(x - pinch.x, y - pinch.y);
    pinch = { far, x, y };
    return;
  }
  if (!panning || panning.id !== event.pointerId) return;
  const [dx, dy] = [event.clientX - panning.x, event.clientY - panning.y];
  if (!panning.moved && Math.hypot(dx, dy) < (slip[event.pointerType] ?? steady)) return;
  panning = { ...panning, x: event.clientX, y: event.clientY, moved: true };
  moveBy(dx, dy);
});
for (const kind of ['pointerup', 'pointercancel']) document.addEventListener(kind, event => {
  fingers.delete(event.pointerId);
  if (pinch && fingers.size < 2) {
    pinch = null;
    // The finger that is left goes on moving what is zoomed.
    for (const [id, [x, y]] of fingers) panning = { id, x, y, moved: true };
  }
  if (panning?.moved) {
    const swallow = click => { click.stopImmediatePropagation(); click.preventDefault(); };
    addEventListener('click', swallow, true);
    setTimeout(() => removeEventListener('click', swallow, true), 0);
  }
  if (panning?.id === event.pointerId) panning = null;
});

document.addEventListener('setout:drawn', () => {
  apply();
  watch();
});
watch();
