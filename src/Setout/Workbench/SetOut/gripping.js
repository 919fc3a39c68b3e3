// Over 200 lines: pointer, fingers and keys move a divider by the same steps, and what they share is said once.
// Dividers are moved on the drawing: by mouse at once, by finger and by keys when they are chosen. One step when it is let go; Escape puts it back.
import { attempt, isTrying, keep, letBe } from './trying.js';
import { speak } from './swapping.js';

const pull = 7, far = 3, slip = 10, tall = 10;
let held = null, hovered = null;

const room = () => document.getElementById('room');
const grips = () => JSON.parse(room()?.dataset.grips ?? '[]');
const drawing = () => [...(room()?.querySelectorAll('.drawing') ?? [])].find(d => d.getClientRects().length > 0);

// Pixels of a place of the piece; through what is looked at, so that zoom counts.
function toScreen(x, z) {
  const shown = drawing(), svg = shown.querySelector('svg');
  const [scale, ox, oy] = shown.dataset.place.split(' ').map(Number);
  const at = new DOMPoint(ox + x / scale, oy - z / scale).matrixTransform(svg.getScreenCTM());
  return [at.x, at.y];
}
function pixelsPerUnit() {
  const [x0] = toScreen(0, 0), [x1] = toScreen(1000, 0);
  return (x1 - x0) / 1000 * (isInch() ? 25.4 : 1);
}
const isOwn = () => room().closest('[data-unit]')?.dataset.shown === room().closest('[data-unit]')?.dataset.unit;
const isInch = () => room().closest('[data-unit]')?.dataset.unit === 'in';

function boxOf(grip) {
  const [x, z, w, h] = grip.box, [left, bottom] = toScreen(x, z), [right, top] = toScreen(x + w, z + h);
  return { left, right, top, bottom };
}

function written(steps, [num, den]) {
  const whole = steps * num;
  if (!isInch()) return String(Math.round(whole / den * 10000) / 10000);
  const n = Math.floor(whole / den), rest = whole % den;
  const common = (a, b) => b === 0 ? a : common(b, a % b), by = common(rest, den);
  return rest === 0 ? String(n) : `${n > 0 ? `${n} ` : ''}${rest / by}/${den / by}`;
}

// Where a size lands: on a place worth stopping at that is near enough, else on the grid.
function land(grip, size, reach) {
  const step = grip.step[0] / grip.step[1];
  const near = grip.snaps.filter(s => Math.abs(s.size - size) <= reach).sort((a, b) => Math.abs(a.size - size) - Math.abs(b.size - size))[0];
  if (near) return { size: near.size, typed: near.typed, words: near.words };
  const most = Math.ceil(grip.room / step) - 1;
  const steps = Math.max(1, Math.min(most, Math.round(size / step)));
  const exact = grip.snaps.find(s => Math.abs(s.size - steps * step) < step / 100);
  return { size: steps * step, typed: written(steps, grip.step), words: exact?.words ?? '' };
}

function send(grip, to) {
  const form = document.getElementById('gripping');
  form.elements.key.value = grip.key;
  // Places are reckoned in the unit of the piece: to whoever is shown figures in another, a bare one would mean that.
  const typed = isOwn() || /[a-z]$/.test(to.typed) ? to.typed : `${to.typed} ${isInch() ? 'in' : 'mm'}`;
  form.elements['field-before'].value = typed;
  return attempt(form, { key: grip.key, choice: 'move', 'field-before': typed, revision: form.elements.revision.value });
}

function said(grip, to) {
  const unit = isInch() ? ' in' : ' mm';
  const side = grip.across ? 'at its left' : 'above it';
  const other = isOwn() ? '' : isInch() ? `, about ${Math.round(to.size * 254) / 10} mm` : `, about ${Math.round(to.size / 25.4 * 100) / 100} in`;
  return `${grip.before}, ${side}: ${to.typed}${unit}${other}${to.words ? `, ${to.words}` : ''}`;
}

function bubble(words, x, y) {
  let tip = document.getElementById('grip-tip');
  if (!words) {
    tip?.remove();
    return;
  }
  if (!tip) {
    tip = document.createElement('p');
    tip.id = 'grip-tip';
    tip.className = 'grip-tip';
    document.getElementById('drawing').append(tip);
  }
  tip.textContent = words;
  const paper = document.getElementById('drawing').getBoundingClientRect();
  tip.style.left = `${Math.max(4, Math.min(x - paper.left + 12, paper.width - tip.offsetWidth - 4))}px`;
  tip.style.top = `${y - paper.top - tip.offsetHeight - 10}px`;
}

function under(event) {
  if (!drawing()) return null;
  for (const grip of grips()) {
    const box = boxOf(grip), more = 4;
    const isIn = event.clientX >= box.left - (grip.across ? more : 0) && event.clientX <= box.right + (grip.across ? more : 0) && event.clientY >= box.top - (grip.across ? 0 : more) && event.clientY <= box.bottom + (grip.across ? 0 : more);
    if (isIn) return grip;
  }
  return null;
}

function take(event, grip, handle) {
  held = { grip, id: event.pointerId, x: event.clientX, y: event.clientY, moved: false, last: null, handle };
  event.preventDefault();
}

document.addEventListener('pointerdown', event => {
  // A second finger is no move of a divider.
  if (held && held.id !== event.pointerId) {
    stop();
    return;
  }
  if (event.button !== 0 || !room()?.contains(event.target)) {
    const handle = event.target.closest?.('.grip');
    if (!handle || event.button !== 0) return;
    const own = grips().find(g => g.key === handle.dataset.grip);
    if (own) {
      take(event, own, handle);
      handle.focus({ preventScroll: true });
    }
    return;
  }
  // A finger moves only what was chosen first, by its handle.
  if (event.pointerType === 'touch') return;
  const grip = under(event);
  if (grip) take(event, grip, null);
});

document.addEventListener('pointermove', event => {
  if (!held) {
    const over = event.pointerType === 'mouse' && room()?.contains(event.target) ? under(event) : null;
    if (over?.key !== hovered?.key) {
      hovered = over;
      if (room()) room().style.cursor = over ? (over.across ? 'ew-resize' : 'ns-resize') : '';
    }
    return;
  }
  if (event.pointerId !== held.id) return;
  const by = held.grip.across ? event.clientX - held.x : event.clientY - held.y;
  // A finger that is only put down wavers.
  if (!held.moved && Math.abs(by) < (event.pointerType === 'touch' ? slip : far)) return;
  held.moved = true;
  const to = land(held.grip, held.grip.size + by / pixelsPerUnit(), pull / pixelsPerUnit());
  bubble(said(held.grip, to), event.clientX, event.clientY);
  if (held.last?.typed === to.typed) return;
  held.last = to;
  send(held.grip, to).then(refused => { if (refused) bubble(refused[0].words, event.clientX, event.clientY); });
});

function release(event) {
  if (!held || event.pointerId !== held.id) return;
  const was = held;
  held = null;
  bubble('');
  if (!was.moved) return;
  // What was a move is no choice of a part.
  const swallow = click => { click.stopImmediatePropagation(); click.preventDefault(); };
  addEventListener('click', swallow, true);
  setTimeout(() => removeEventListener('click', swallow, true), 0);
  if (event.type === 'pointercancel' || !was.last || was.last.size === was.grip.size) {
    letBe();
    return;
  }
  document.getElementById('gripping').requestSubmit();
  speak(said(was.grip, was.last));
}
for (const kind of ['pointerup', 'pointercancel']) document.addEventListener(kind, release);

function stop() {
  held = null;
  bubble('');
  letBe();
}
document.addEventListener('keydown', event => {
  if (event.key === 'Escape' && held) stop();
});

// The handle of what is chosen: a slider for keys and fingers.
let nudged = null, focused = null;
function handles() {
  const chosen = new URL(location.href).searchParams.get('size') ?? '';
  const owner = chosen.split('#')[0];
  const paper = document.getElementById('drawing');
  const there = new Map([...document.querySelectorAll('.grip')].map(h => [h.dataset.grip, h]));
  if (!room() || !drawing()) {
    for (const handle of there.values()) handle.remove();
    return;
  }
  for (const grip of grips()) {
    const isChosen = owner === grip.key || owner.startsWith(`${grip.key}.`) || (grip.also && (owner === grip.also || owner.startsWith(`${grip.also}.`)));
    let handle = there.get(grip.key);
    there.delete(grip.key);
    if (!isChosen) {
      handle?.remove();
      continue;
    }
    if (!handle) {
      handle = document.createElement('div');
      handle.className = `grip ${grip.across ? 'is-across' : 'is-down'}`;
      handle.dataset.grip = grip.key;
      handle.tabIndex = 0;
      handle.setAttribute('role', 'slider');
      handle.setAttribute('aria-label', `Move ${grip.key}`);
      handle.setAttribute('aria-orientation', grip.across ? 'horizontal' : 'vertical');
      handle.setAttribute('aria-valuemin', '0');
      handle.title = `Drag, or arrow keys: one step of the grid, with Shift ${isInch() ? '1 in' : '10 mm'}. Enter keeps it, Escape lets it be, and once more goes back to the drawing.`;
      paper.append(handle);
    }
    const at = nudged?.key === grip.key ? nudged.to : { size: grip.size, typed: written(Math.round(grip.size / (grip.step[0] / grip.step[1])), grip.step), words: '' };
    handle.setAttribute('aria-valuemax', grip.room);
    handle.setAttribute('aria-valuenow', at.size);
    handle.setAttribute('aria-valuetext', said(grip, at));
    const box = boxOf(grip), off = (held?.grip.key === grip.key && held.last ? held.last.size - grip.size : at.size - grip.size) * pixelsPerUnit(), edge = paper.getBoundingClientRect();
    handle.style.left = `${(box.left + box.right) / 2 + (grip.across ? off : 0) - edge.left}px`;
    handle.style.top = `${(box.top + box.bottom) / 2 + (grip.across ? 0 : off) - edge.top}px`;
  }
  for (const handle of there.values()) handle.remove();
  if (focused) document.querySelector(`.grip[data-grip="${CSS.escape(focused)}"]`)?.focus({ preventScroll: true });
  focused = null;
}

// One step with an arrow key; false where the divider does not go that way.
function push(grip, key, isFar) {
  const way = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }[key];
  if (!way || grip.across !== /Left|Right/.test(key)) return false;
  const step = grip.step[0] / grip.step[1], big = isInch() ? 1 : tall;
  const from = nudged?.key === grip.key ? nudged.to.size : grip.size;
  const steps = isFar ? from + way * big : (way > 0 ? Math.floor(from / step + 1e-6) + 1 : Math.ceil(from / step - 1e-6) - 1) * step;
  const to = land(grip, steps, 0);
  nudged = { key: grip.key, to };
  speak(said(grip, to));
  send(grip, to).then(refused => { if (refused) speak(refused[0].words); });
  handles();
  return true;
}

// The dividers that are meant by what is chosen: of like ones that are chosen together, such as posts, those that stand where one is on the drawing.
function meant(at) {
  handles();
  const all = [...document.querySelectorAll('.grip')].map(h => grips().find(g => g.key === h.dataset.grip));
  const isThere = grip => {
    const box = boxOf(grip);
    return at.left < box.right - 1 && at.right > box.left + 1 && at.top < box.bottom - 1 && at.bottom > box.top + 1;
  };
  return all.length > 1 && at ? all.filter(isThere) : all;
}
const handleOf = grip => document.querySelector(`.grip[data-grip="${CSS.escape(grip.key)}"]`);

/// Gives the handle of what is chosen the keyboard; false where it has none.
export function holdChosen(at) {
  const handle = meant(at).map(handleOf)[0];
  handle?.focus({ preventScroll: true });
  return handle !== undefined;
}

/// Moves what is chosen by an arrow key, or says why it stays where it is.
export function pushChosen(key, at) {
  const moved = meant(at), grip = moved.find(g => g.across === /Left|Right/.test(key));
  if (grip) {
    handleOf(grip).focus({ preventScroll: true });
    push(grip, key, false);
    return;
  }
  tell(moved.length > 0 ? `${moved[0].key} goes ${moved[0].across ? 'to the left and right' : 'up and down'} only.` : room()?.dataset.stays || 'It is not moved by hand.');
}

function tell(words) {
  const line = document.getElementById('stays');
  if (!line) return;
  line.textContent = words;
  line.hidden = false;
  speak(words);
}

document.addEventListener('keydown', event => {
  const handle = event.target.closest?.('.grip');
  if (!handle || event.ctrlKey || event.metaKey || event.altKey) return;
  const grip = grips().find(g => g.key === handle.dataset.grip);
  if (!grip) return;
  // Escape lets it be; where nothing is tried it goes back to the drawing.
  if (event.key === 'Escape' && !isTrying()) {
    event.preventDefault();
    event.stopPropagation();
    room().focus({ preventScroll: true });
    speak(room().getAttribute('aria-label'));
    return;
  }
  if (event.key === 'Enter') {
    event.preventDefault();
    if (isTrying()) {
      focused = grip.key;
      keep();
    }
    return;
  }
  if (push(grip, event.key, event.shiftKey)) event.preventDefault();
}, true);

document.addEventListener('setout:swapped', () => { nudged = null; });
document.addEventListener('setout:drawn', () => {
  if (!isTrying() && !held) nudged = null;
  handles();
});
addEventListener('resize', handles);
handles();
