// Trials: an edit is tried on the kept text while it is typed or dragged. The drawing follows at once, the page when there is time, the layouts last; the next key gives up what is under way.
import { blame, fieldOf, forgive } from './blaming.js';
import { handOver, speak } from './swapping.js';

const restAfter = 160, planAfter = 400;
let now = null; // The trial that stands: its form, its fields, what was there before.
let asking = null, later = [];

export const isTrying = () => now !== null;

/// What a form sends, as an edit.
export const fieldsOf = form => Object.fromEntries([...new FormData(form)].filter(([, value]) => typeof value === 'string'));

const isNarrow = () => getComputedStyle(document.querySelector('#drawing .for-phone') ?? document.body).display !== 'none' && !!document.querySelector('#drawing .for-phone');
const shown = () => document.querySelector(isNarrow() ? '#drawing .for-phone' : '#drawing .for-desk');

function giveUp() {
  asking?.abort();
  asking = null;
  for (const timer of later) clearTimeout(timer);
  later = [];
}

function begin(form) {
  if (now) {
    now.form = form;
    return;
  }
  now = { form, kept: new Map() };
  document.documentElement.dataset.trial = '';
}

// What a trial puts in the place of something is remembered once, so that letting it be needs no page.
function put(element, fresh) {
  if (!element || !fresh) return;
  const key = element.id || element.className;
  if (!now.kept.has(key)) now.kept.set(key, { now: fresh, before: element });
  else now.kept.get(key).now = fresh;
  handOver(() => element.replaceWith(fresh));
}

async function ask(form, fields, part, signal) {
  const here = new URL(location.href).searchParams;
  const body = new URLSearchParams(fields);
  for (const word of ['size', 'view', 'turn', 'tip', 'apart']) if (here.has(word)) body.set(word, here.get(word));
  body.set('part', part);
  body.set('paper', isNarrow() ? 'narrow' : 'wide');
  const against = localStorage.getItem(`against ${location.pathname}`);
  if (against) body.set('against', against);
  const answer = await fetch(form.action.replace(/\/edit$/, '/trial'), { method: 'POST', body, signal, headers: { Accept: 'text/html' } });
  const kind = answer.headers.get('content-type') ?? '', text = await answer.text();
  return { isSound: answer.ok && kind.startsWith('text/html'), text, slips: kind.startsWith('application/json') ? JSON.parse(text) : [{ field: '', words: text }] };
}

/// Tries an edit. Answers null when it stands on the drawing, else why it cannot be made, each slip with its field; undefined when something newer has taken its place.
export async function attempt(form, fields) {
  giveUp();
  const mine = asking = new AbortController();
  const room = document.getElementById('drawing');
  // A page that comes by itself waits for the answer.
  document.documentElement.dataset.asking = '';
  try {
    const answer = await ask(form, fields, 'drawing', mine.signal);
    if (mine.signal.aborted) return undefined;
    if (!answer.isSound) {
      room?.classList.add('is-behind');
      return answer.slips;
    }
    begin(form);
    now.fields = fields;
    const page = new DOMParser().parseFromString(answer.text, 'text/html');
    const drawn = page.querySelector('[data-trial-drawing]'), place = shown();
    if (drawn?.firstElementChild && place) {
      const fresh = place.cloneNode(false);
      fresh.append(...drawn.childNodes);
      put(place, document.adoptNode(fresh));
    }
    put(document.getElementById('working'), document.adoptNode(page.getElementById('working')));
    mark(page.querySelector('[data-trial]').dataset.trial);
    document.dispatchEvent(new Event('setout:drawn'));
    later = [setTimeout(() => follow(form, fields, 'page', mine.signal), restAfter), setTimeout(() => follow(form, fields, 'plan', mine.signal), planAfter)];
    return null;
  } catch (failed) {
    if (failed.name === 'AbortError') return undefined;
    return [{ words: 'The workbench does not answer. What you typed is still here; try again.', field: '' }];
  } finally {
    if (asking === mine || asking === null) delete document.documentElement.dataset.asking;
  }
}

// Parts, outline and notes; what still waits for the layouts is grey until it is there.
async function follow(form, fields, part, signal) {
  try {
    const answer = await ask(form, fields, part, signal);
    if (!answer.isSound || signal.aborted || !now) return;
    const page = new DOMParser().parseFromString(answer.text, 'text/html');
    for (const id of ['parts', 'outline', 'notes']) put(document.getElementById(id), page.getElementById(id) && document.adoptNode(page.getElementById(id)));
    if (part === 'page') {
      for (const id of ['parts', 'outline']) document.getElementById(id)?.classList.remove('is-behind');
      document.dispatchEvent(new Event('setout:followed'));
      return;
    }
    document.getElementById('notes')?.classList.remove('is-behind');
    const line = document.querySelector('#cost [data-cost-line]'), words = page.querySelector('#cost [data-cost-line]')?.textContent;
    if (line && words) {
      now.cost ??= line.textContent;
      line.textContent = words;
      document.getElementById('cost').classList.remove('is-behind');
      speak(`Trial. ${words}`);
    }
    document.dispatchEvent(new Event('setout:followed'));
  } catch {
    // Given up by the next key.
  }
}

function mark(name) {
  const bar = document.getElementById('trial-bar');
  document.getElementById('drawing')?.classList.add('is-trial');
  document.getElementById('drawing')?.classList.remove('is-behind');
  for (const id of ['parts', 'outline', 'notes', 'cost']) document.getElementById(id)?.classList.add('is-behind');
  if (!bar) return;
  bar.hidden = false;
  bar.querySelector('[data-trial-words]').textContent = `${name}.`;
  bar.querySelector('[data-trial-fault]').textContent = '';
}

function unmark() {
  delete document.documentElement.dataset.trial;
  for (const id of ['drawing', 'parts', 'outline', 'notes', 'cost']) document.getElementById(id)?.classList.remove('is-trial', 'is-behind');
  const bar = document.getElementById('trial-bar');
  if (bar) bar.hidden = true;
}

/// Goes back to what is kept.
export function letBe() {
  giveUp();
  document.getElementById('drawing')?.classList.remove('is-behind');
  if (!now) return;
  for (const { now: fresh, before } of now.kept.values()) {
    before.classList.remove('is-behind');
    if (fresh.isConnected) handOver(() => fresh.replaceWith(before));
  }
  const line = document.querySelector('#cost [data-cost-line]');
  if (line && now.cost !== undefined) line.textContent = now.cost;
  now = null;
  unmark();
  document.dispatchEvent(new Event('setout:drawn'));
  document.dispatchEvent(new Event('setout:followed'));
}

/// Keeps what is tried.
export function keep() {
  now?.form.requestSubmit();
}

document.addEventListener('setout:swapped', () => {
  giveUp();
  now = null;
  unmark();
  document.dispatchEvent(new Event('setout:drawn'));
  document.dispatchEvent(new Event('setout:followed'));
});

// Every form that is offered for what is chosen is tried while one types in it.
document.addEventListener('input', async event => {
  const form = event.target.closest?.('form[data-change-form]');
  if (!form?.elements.choice || !form.elements.key || !/\/piece\/[^/]+\/edit$/.test(form.action)) return;
  const isAsItWas = [...form.elements].every(e => e.type === 'hidden' || e.tagName === 'BUTTON' || (e.tagName === 'SELECT' ? e.options[e.selectedIndex]?.defaultSelected !== false : e.value === e.defaultValue));
  if (isAsItWas) {
    letBe();
    forgive(form);
    return;
  }
  const refused = await attempt(form, fieldsOf(form));
  if (refused === undefined) return;
  if (refused === null) {
    forgive(form);
    return;
  }
  // A field that one has not come to yet is no mistake; one that was told of stays so.
  const isDue = field => !field || field.value !== '' || field === event.target || field.hasAttribute('aria-invalid');
  blame(form, refused.filter(slip => isDue(fieldOf(form, slip.field))));
});

document.addEventListener('keydown', event => {
  if (event.key === 'Escape' && (now || asking)) letBe();
});
document.addEventListener('reset', () => letBe());
document.addEventListener('click', event => {
  if (event.target.closest?.('[data-trial-keep]')) keep();
  if (event.target.closest?.('[data-trial-drop]')) {
    const form = now?.form;
    letBe();
    form?.reset();
  }
});
