// Over 200 lines: all that whoever is at a page has in hand (keyboard, press, chosen words, folds, what is typed) goes over to a fresh one in one place. Puts what a fresh page has in the place of what this one has, and leaves whoever is at it where he is: what is folded open stays open, the keyboard stays, nothing goes away under a finger.
const words = element => element?.textContent.replace(/\s+/g, ' ').trim() ?? '';
// Two buttons with the same words may be told apart by what they are about.
const called = element => (element.getAttribute('aria-label') ?? words(element)) || element.name;
const region = element => element.closest('[data-swap]');
// One fold may have the same words as another that belongs to something else.
const foldKey = fold => `${region(fold)?.id} ${fold.dataset.choice ?? (fold.id || `${fold.parentElement.closest('[data-choice]')?.dataset.choice ?? ''} ${words(fold.querySelector('summary'))}`)}`;

// What has the keyboard, so that the same thing can be found among fresh ones.
function placeOf(element) {
  if (!element || element === document.body) return null;
  if (element.id) return { id: element.id };
  const around = region(element);
  if (!around) return null;
  const like = alike(around, element.tagName, called(element), element.getAttribute('href'));
  return { around: around.id, tag: element.tagName, words: called(element), href: element.getAttribute('href'), at: like.indexOf(element) };
}
const alike = (around, tag, name, href) => [...around.querySelectorAll(tag)].filter(e => called(e) === name && e.getAttribute('href') === href);
function find(place) {
  if (!place) return null;
  if (place.id) return document.getElementById(place.id);
  const around = document.getElementById(place.around);
  return around ? alike(around, place.tag, place.words, place.href)[place.at] ?? null : null;
}

// Letters and signs alone can be turned off: see how pages are shown.
export const hasSingleKeys = () => document.documentElement.dataset.keys !== 'off';

/** Says something once, politely, to whoever listens to the page. */
export function speak(said) {
  let voice = document.getElementById('voice');
  if (!voice) {
    voice = document.createElement('p');
    voice.id = 'voice';
    voice.className = 'unseen';
    voice.setAttribute('role', 'status');
    document.body.append(voice);
  }
  voice.textContent = said;
}

// What stands around something, from the inside: where the keyboard goes when the thing itself is gone.
const marks = ['data-entry', 'data-run', 'data-choice'];
function wayOut(element) {
  const way = [];
  for (let at = element?.parentElement; at && at !== document.body; at = at.parentElement) {
    const mark = marks.find(m => at.hasAttribute(m));
    if (at.id) way.push(`#${CSS.escape(at.id)}`);
    else if (mark) way.push(`[${mark}="${CSS.escape(at.getAttribute(mark))}"]`);
    if (at.matches('[data-swap]')) break;
  }
  return way;
}
let way = [];

// What stands in the way of no Tab can have the keyboard too: a heading, a section.
function take(element) {
  if (element.tabIndex < 0 && !element.hasAttribute('tabindex')) element.tabIndex = -1;
  element.focus({ preventScroll: true });
}

/** Gives the keyboard to something and brings it into view. */
export function give(element) {
  if (!element) return false;
  take(element);
  element.scrollIntoView({ block: 'nearest' });
  return document.activeElement === element;
}

// What had the keyboard and was not among what came: a script may make it anew, as it does with handles on the drawing.
let lost = null;

/** Where the keyboard lost its place by the last swap: to the same thing where it is there again, else to the nearest of what stood around it, and never to another act of the same kind. */
export function settle() {
  const again = lost;
  lost = null;
  if (document.activeElement && document.activeElement !== document.body) return;
  const same = find(again);
  if (same) {
    take(same);
    if (document.activeElement === same) return;
  }
  for (const selector of way) {
    const there = document.querySelector(selector);
    if (!there || there.getClientRects().length === 0) continue;
    const to = there.matches('details') ? there.querySelector(':scope > summary')
      : there.matches('[data-swap]') ? [...there.querySelectorAll('h1, h2, h3, .working-title')].find(h => !h.matches('.unseen') && h.getClientRects().length > 0) ?? there : there;
    if (give(to)) return;
  }
}

// Which folds are open, by what they are called, and opening them again.
const foldsIn = selector => [...document.querySelectorAll(`[data-swap] ${selector}`)];
export const folds = () => foldsIn('details[open]').map(foldKey);
function unfold(keys) {
  for (const fold of foldsIn('details')) if (keys.includes(foldKey(fold))) fold.open = true;
}
// Which a page came with open: those of them that are shut were shut by somebody.
function comesOpen() {
  for (const fold of foldsIn('details[open]')) fold.dataset.cameOpen = '';
}
comesOpen();

/** The way out of what has the keyboard, kept over the load of another page, and what was folded open. */
export const leaving = () => wayOut(document.activeElement);
export function arrived(kept, open) {
  unfold(open);
  way = kept;
  settle();
}

// What is pressed just now. If a fresh one takes its place before it is let go, the press is the fresh one's: the browser would drop it.
let pressed = null;
addEventListener('pointerdown', event => {
  const element = event.button === 0 ? event.target.closest?.('a[href], button, summary') : null;
  pressed = element ? { element, place: placeOf(element), isFresh: false, x: event.clientX, y: event.clientY } : null;
}, true);
addEventListener('pointerup', event => {
  const was = pressed;
  pressed = null;
  // What came may have moved it from under the pointer: let go where it was pressed, it is meant all the same.
  if (was?.isFresh && Math.hypot(event.clientX - was.x, event.clientY - was.y) < 6) setTimeout(() => { if (was.element.isConnected) was.element.click(); }, 0);
}, true);
addEventListener('pointercancel', () => { pressed = null; }, true);

// What is chosen of the words in a field: the next key replaces the same in the fresh one.
const chosenIn = element => typeof element?.selectionStart === 'number' ? [element.selectionStart, element.selectionEnd, element.selectionDirection] : null;

/** Puts something fresh in the place of something else by whatever is given; what has the keyboard there, and what is pressed, goes over to the fresh one. Returns whether the keyboard is still where it was. */
export function handOver(replace) {
  const place = placeOf(document.activeElement), chosen = chosenIn(document.activeElement);
  if (pressed) pressed.place = placeOf(pressed.element) ?? pressed.place;
  replace();
  if (pressed && !pressed.element.isConnected) {
    const fresh = find(pressed.place);
    pressed = fresh ? { ...pressed, element: fresh, isFresh: true } : null;
  }
  const held = find(place);
  if (held && held !== document.activeElement) {
    take(held);
    if (chosen && chosenIn(held)) held.setSelectionRange(...chosen);
  }
  // What is not shown yet cannot have it: it may be shown in a moment.
  lost = held && held === document.activeElement ? null : place;
  return held !== null && held === document.activeElement;
}

let swaps = 0;

/** What the page shows just now: what was asked for of another is out of date. */
export const shown = () => `${swaps} ${location.href}`;

/** Swaps all regions, or one; returns whether the keyboard is still where it was. Of a page that comes by itself folds that somebody shut stay shut. */
export function swap(fresh, only = null, isByItself = false) {
  swaps++;
  way = wayOut(document.activeElement);
  const open = folds(), shut = isByItself ? foldsIn('details[data-came-open]:not([open])').map(foldKey) : [];
  // What it shows is told with it; of one region alone the page stays as old as it was.
  if (only === null) document.documentElement.dataset.stand = fresh.documentElement.dataset.stand ?? '';
  return handOver(() => {
    for (const old of document.querySelectorAll('[data-swap]')) {
      const next = only === null || old.id === only ? fresh.getElementById(old.id) : null;
      if (next) old.replaceWith(document.adoptNode(next));
    }
    comesOpen();
    for (const fold of foldsIn('details[open]')) if (shut.includes(foldKey(fold))) fold.open = false;
    unfold(open);
  });
}

const isTick = e => e.type === 'checkbox' || e.type === 'radio';

/** Whether something is typed, chosen or ticked in a form that was not sent yet. */
export const isDirty = form => [...form.elements].some(e => e.tagName === 'SELECT'
  ? e.selectedIndex !== Math.max(0, [...e.options].findIndex(o => o.defaultSelected))
  : isTick(e) ? e.checked !== e.defaultChecked
  : (e.type === 'text' || e.tagName === 'TEXTAREA') && e.value !== e.defaultValue);

const typed = e => e.id && (e.tagName === 'SELECT' || e.tagName === 'TEXTAREA' || e.type === 'text');

// What a form does, and to what: all that it sends along unseen but what tells one sending from another. Fields of another thing may have the same ids.
const sendings = ['change', 'revision', 'back'];
export const about = form => JSON.stringify([form.action, ...[...form.elements].filter(e => e.type === 'hidden' && !sendings.includes(e.name)).map(e => [e.name, e.value])]);

/** What was typed in other forms while one was sent: it is put back into the same fields of the page that comes, where that has them, of the same thing. */
export function keepTyped(sent) {
  const forms = () => [...document.querySelectorAll('[data-swap] form')], dirty = forms().filter(f => f !== sent && isDirty(f));
  const kept = dirty.flatMap(f => [...f.elements].filter(typed).map(e => ({ id: e.id, name: e.name, value: e.value, of: about(f) })));
  const ticks = dirty.flatMap(f => [...f.elements].filter(isTick).map(e => ({ name: e.name, value: e.value, isOn: e.checked, of: about(f) })));
  return () => {
    for (const { name, value, isOn, of } of ticks) {
      const tick = [...forms().find(f => about(f) === of)?.elements ?? []].find(e => isTick(e) && e.name === name && e.value === value);
      if (tick) tick.checked = isOn;
    }
    for (const { id, name, value, of } of kept) {
      const field = document.getElementById(id);
      if (!field || field.name !== name || !typed(field) || !field.form || about(field.form) !== of) continue;
      if (field.tagName !== 'SELECT' || [...field.options].some(o => o.value === value)) field.value = value;
    }
  };
}

// A page that changes by itself waits until nobody is just doing something: a press would meet what is not there any more.
let isDown = false, last = -1000;
for (const [kind, down] of [['pointerdown', true], ['pointerup', false], ['pointercancel', false]])
  addEventListener(kind, () => {
    isDown = down;
    last = performance.now();
  }, true);
for (const kind of ['keydown', 'input']) addEventListener(kind, () => { last = performance.now(); }, true);

/** Waits for a moment in which nobody does anything, and nothing that was tried is still being asked for: a page that came then would drop it. */
export async function quiet() {
  while (isDown || performance.now() - last < 400 || document.documentElement.dataset.asking !== undefined) await new Promise(done => setTimeout(done, 80));
}
