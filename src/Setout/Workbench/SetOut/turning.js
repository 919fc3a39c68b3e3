// Over 200 lines: the sums of one picture, with hand and keys that turn it. Turns the piece while a hand or a key moves it. The sums are those of TurningView and PaintingOrder on the server, which draws the page without a script.
import { speak } from './swapping.js';

const faces = [[0, 4, 6, 2], [1, 3, 7, 5], [0, 1, 5, 4], [2, 6, 7, 3], [0, 2, 3, 1], [4, 5, 7, 6]];
const edgeOn = 1e-6, touching = 1e-6, sure = 1 << 16, mostApart = 2;

function standpoint(turn, tip, apart) {
  return { turn: ((turn % 360) + 360) % 360, tip: Math.min(90, Math.max(-90, tip)), apart: Math.min(mostApart, Math.max(0, apart)) };
}

function eyeOf(from) {
  const turn = from.turn * Math.PI / 180, tip = from.tip * Math.PI / 180;
  const [st, ct, sp, cp] = [Math.sin(turn), Math.cos(turn), Math.sin(tip), Math.cos(tip)];
  return {
    sight: [-st * cp, ct * cp, -sp],
    of(x, y, z) {
      const right = x * ct + y * st, back = y * ct - x * st;
      return [right, z * cp + back * sp, back * cp - z * sp];
    },
  };
}

const corner = (box, bits) => [box[bits & 1 ? 3 : 0], box[bits & 2 ? 4 : 1], box[bits & 4 ? 5 : 2]];

function farther(a, b, sight) {
  let aIsFar = false, bIsFar = false, isParted = false, least = 0, leastShared = Infinity;
  for (let axis = 0; axis < 3; axis++) {
    const shared = Math.min(a[axis + 3], b[axis + 3]) - Math.max(a[axis], b[axis]);
    if (shared < leastShared && Math.abs(sight[axis]) > edgeOn) [least, leastShared] = [axis, shared];
    if (shared > touching) continue;
    isParted = true;
    if (Math.abs(sight[axis]) <= edgeOn) continue;
    if ((a[axis] + a[axis + 3] < b[axis] + b[axis + 3]) === sight[axis] > 0) bIsFar = true;
    else aIsFar = true;
  }
  if (!isParted) return [(a[least] + a[least + 3] < b[least] + b[least + 3]) === sight[least] > 0 ? 1 : -1, 1];
  return [aIsFar === bIsFar ? 0 : aIsFar ? -1 : 1, sure];
}

export function paintingOrder(boxes, eye) {
  const shadows = boxes.map(box => {
    const seen = [0, 1, 2, 3, 4, 5, 6, 7].map(bits => eye.of(...corner(box, bits)));
    const [xs, ys] = [seen.map(s => s[0]), seen.map(s => s[1])];
    return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys), far: eye.of((box[0] + box[3]) / 2, (box[1] + box[4]) / 2, (box[2] + box[5]) / 2)[2] };
  });
  const after = boxes.map(() => []), open = boxes.map(() => 0);
  for (let a = 0; a < boxes.length; a++) {
    for (let b = a + 1; b < boxes.length; b++) {
      const [s, t] = [shadows[a], shadows[b]];
      if (!(s.left < t.right - touching && t.left < s.right - touching && s.low < t.high - touching && t.low < s.high - touching)) continue;
      const [first, weight] = farther(boxes[a], boxes[b], eye.sight);
      if (first === 0) continue;
      const [before, later] = first < 0 ? [a, b] : [b, a];
      after[before].push([later, weight]);
      open[later] += weight;
    }
  }
  const rank = i => open[i] === 0 ? 2 : open[i] < sure ? 1 : 0;
  const order = [], done = boxes.map(() => false);
  while (order.length < boxes.length) {
    let next = -1;
    for (let i = 0; i < boxes.length; i++)
      if (!done[i] && (next < 0 || rank(i) > rank(next) || (rank(i) === rank(next) && shadows[i].far > shadows[next].far))) next = i;
    done[next] = true;
    order.push(next);
    for (const [later, weight] of after[next]) open[later] -= weight;
  }
  return order;
}

class Turning {
  constructor(root) {
    this.root = root;
    const blocks = JSON.parse(root.dataset.blocks);
    this.keys = blocks.map(b => b[0]);
    this.wash = blocks.map(b => b[1]);
    this.boxes = blocks.map(b => b.slice(2, 8));
    // Blocks that make up one member with holes keep together, and only some of their edges are seen.
    this.around = blocks.map(b => b[8] ?? [0, 1, 2].map(i => (b[2 + i] + b[5 + i]) / 2));
    this.edges = blocks.map(b => b[9] ?? null);
    const of = (pick, at) => pick(...this.boxes.map(b => b[at]));
    this.middle = [0, 1, 2].map(i => (of(Math.min, i) + of(Math.max, i + 3)) / 2);
    this.from = standpoint(...root.dataset.turning.split(' ').map(Number));
    this.pages = [...root.querySelectorAll('svg')].map(svg => {
      const [, , width, height] = (svg.dataset.whole ?? svg.getAttribute('viewBox')).split(' ').map(Number);
      // One group for each block; a member with holes has several of its key.
      const byKey = Map.groupBy(svg.querySelectorAll('g[data-key]'), group => group.dataset.key);
      return { svg, width, height, groups: this.keys.map(key => byKey.get(key)?.shift()) };
    });
  }

  draw() {
    const apart = this.from.apart, eye = eyeOf(this.from);
    const offs = this.around.map(a => [0, 1, 2].map(i => (a[i] - this.middle[i]) * apart));
    const boxes = this.boxes.map((b, n) => {
      const off = offs[n];
      return [b[0] + off[0], b[1] + off[1], b[2] + off[2], b[3] + off[0], b[4] + off[1], b[5] + off[2]];
    });
    const order = paintingOrder(boxes, eye);
    const reach = Math.hypot(...[0, 1, 2].map(i => Math.max(Math.max(...boxes.map(b => b[i + 3])) - this.middle[i], this.middle[i] - Math.min(...boxes.map(b => b[i])))));
    const seen = [0, 1, 2].flatMap(axis => eye.sight[axis] > edgeOn ? [2 * axis] : eye.sight[axis] < -edgeOn ? [2 * axis + 1] : []);
    for (const page of this.pages) {
      const scale = Math.min(page.width, page.height) / (2 * reach);
      for (const i of order) {
        const group = page.groups[i], off = offs[i], edges = this.edges[i];
        if (!group) continue;
        const place = (x, y, z) => {
          const [right, up] = eye.of(x - this.middle[0], y - this.middle[1], z - this.middle[2]);
          return `${(page.width / 2 + right * scale).toFixed(3)} ${(page.height / 2 - up * scale).toFixed(3)}`;
        };
        const at = [0, 1, 2, 3, 4, 5, 6, 7].map(bits => place(...corner(boxes[i], bits)));
        const paths = seen.map(face => [edges ? this.wash[i] : `${this.wash[i]} so-part`, `M${faces[face].map(c => at[c]).join('L')}Z`]);
        const lines = (edges ?? []).filter(e => seen.includes(e[0]) || seen.includes(e[1]));
        if (lines.length > 0) paths.push(['so-part', lines.map(e => `M${place(e[2] + off[0], e[3] + off[1], e[4] + off[2])}L${place(e[5] + off[0], e[6] + off[1], e[7] + off[2])}`).join('')]);
        while (group.childElementCount < paths.length) group.append(document.createElementNS('http://www.w3.org/2000/svg', 'path'));
        while (group.childElementCount > paths.length) group.lastElementChild.remove();
        paths.forEach(([look, d], k) => {
          let path = group.children[k];
          if (path.tagName !== 'path') {
            const fresh = document.createElementNS('http://www.w3.org/2000/svg', 'path');
            path.replaceWith(fresh);
            path = fresh;
          }
          path.setAttribute('class', look);
          path.setAttribute('d', d);
        });
        page.svg.append(group);
      }
    }
  }

  move(turn, tip, apart) {
    this.go(this.from.turn + turn, this.from.tip + tip, this.from.apart + apart);
  }

  go(turn, tip, apart) {
    this.from = standpoint(turn, tip, apart);
    if (this.waits) return;
    this.waits = true;
    requestAnimationFrame(() => {
      this.waits = false;
      this.draw();
      const text = [this.from.turn, this.from.tip, this.from.apart].map(n => String(Math.round(n * 100) / 100));
      this.root.dataset.turning = text.join(' ');
      const url = new URL(location.href);
      ['turn', 'tip', 'apart'].forEach((word, i) => url.searchParams.set(word, text[i]));
      history.replaceState(history.state, '', url);
    });
  }
}

const known = new WeakMap();
function turningOf(element) {
  const root = element?.closest?.('[data-turning]') ?? document.querySelector('[data-turning]');
  if (!root) return null;
  if (!known.has(root)) known.set(root, new Turning(root));
  return known.get(root);
}

let held = null;
document.addEventListener('pointerdown', event => {
  const root = event.target.closest?.('[data-turning]');
  // Two fingers look closer, and Shift moves the paper.
  if (held || event.shiftKey) held = null;
  else if (root && event.button === 0) held = { turning: turningOf(root), x: event.clientX, y: event.clientY, moved: false, id: event.pointerId, root };
});
document.addEventListener('pointermove', event => {
  if (!held || held.id !== event.pointerId) return;
  const [dx, dy] = [event.clientX - held.x, event.clientY - held.y];
  if (!held.moved && Math.hypot(dx, dy) < 4) return;
  held.moved = true;
  [held.x, held.y] = [event.clientX, event.clientY];
  held.turning.move(-dx * 0.5, event.pointerType === 'touch' ? 0 : dy * 0.5, 0);
});
for (const kind of ['pointerup', 'pointercancel']) document.addEventListener(kind, () => {
  // What was a turn is no choice of a part.
  if (held?.moved) {
    const root = held.root, swallow = event => event.stopPropagation();
    root.addEventListener('click', swallow, true);
    setTimeout(() => root.removeEventListener('click', swallow, true), 0);
  }
  held = null;
});

const keys = { ArrowLeft: [-5, 0, 0], ArrowRight: [5, 0, 0], ArrowUp: [0, 5, 0], ArrowDown: [0, -5, 0], '+': [0, 0, 0.1], '=': [0, 0, 0.1], '-': [0, 0, -0.1] };
document.addEventListener('keydown', event => {
  if (event.target.dataset?.turning === undefined || event.ctrlKey || event.metaKey || event.altKey || !keys[event.key]) return;
  event.preventDefault();
  turningOf(event.target).move(...keys[event.key]);
});

document.addEventListener('click', event => {
  const link = event.target.closest?.('[data-turn]');
  if (!link || event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey) return;
  const turning = turningOf(null);
  if (!turning) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  const [what, by, tip] = link.dataset.turn.split(' ');
  if (what === 'to') {
    turning.go(+by, +tip, turning.from.apart);
    speak(`Seen ${link.textContent.trim()}.`);
    return;
  }
  turning.move(what === 'turn' ? +by : 0, what === 'tip' ? +by : 0, what === 'apart' ? +by : 0);
}, true);
