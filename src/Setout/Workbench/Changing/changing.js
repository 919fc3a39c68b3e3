// Over 200 lines: what is sent, what came of it, and what others changed meanwhile share one stand of the page. Sends forms without leaving the page, shows what came of them beside the field, and follows what other windows change. Every form works without it.
import { blame, forgive, keepTold } from './blaming.js';
import { arrived, folds, give, isDirty, keepTyped, leaving, quiet, settle, shown, speak, swap } from './swapping.js';
import { seenAsNow } from './workbench.js';

const swapped = '[data-swap]';

// What a form sends; afterwards one looks at the piece from where one looked at it.
function sent(form, submitter) {
  const body = new URLSearchParams(new FormData(form, submitter)), back = body.get('back');
  if (back) {
    const url = seenAsNow(new URL(back, location.href));
    body.set('back', url.pathname + url.search + url.hash);
  }
  return body;
}

// What is said when something was made: what moved by it, else the step, else that it is kept.
const movedOn = page => page.querySelector('p[data-say]')?.textContent ?? '';
const stepOf = (page, which) => page.querySelector(`[data-key-${which}]`)?.title ?? '';
const now = () => ({ moved: movedOn(document), undo: stepOf(document, 'undo'), redo: stepOf(document, 'redo') });
function saidAfter(fresh, before, form) {
  const moved = movedOn(fresh), step = stepOf(fresh, 'undo'), kept = fresh.querySelector('#history [role="status"]')?.textContent ?? '';
  if (form.dataset.said) return form.dataset.said;
  if (moved && moved !== before.moved) return moved;
  if (form.querySelector('[data-key-undo]')) return `Taken back: ${before.undo}`;
  if (form.querySelector('[data-key-redo]')) return `Made again: ${before.redo}`;
  return step && step !== before.undo ? `${step}; ${kept}` : kept;
}

// A page of another kind is loaded whole: what is said, and where the keyboard was, go along.
const along = 'setout-along';
let isLeaving = false;
function load(url, said, made) {
  isLeaving = true;
  try {
    sessionStorage.setItem(along, JSON.stringify({ said, way: made ? [made, ...leaving()] : leaving(), open: folds() }));
  } catch {
    // Then it is only not said.
  }
  if (url && url !== location.href) location.assign(url);
  else location.reload();
}
try {
  const kept = JSON.parse(sessionStorage.getItem(along) ?? 'null');
  sessionStorage.removeItem(along);
  if (kept) {
    arrived([...kept.way, '#main'], kept.open);
    if (kept.said) setTimeout(() => speak(kept.said), 200);
  }
} catch {
  // Nothing was left there.
}

// What a form makes, among what a page has of its kind: the one that is on the fresh page alone, as a selector.
function madeBy(form, fresh) {
  const kind = form?.dataset.thenNew, made = kind && [...fresh.querySelectorAll(kind)].find(e => !document.getElementById(e.id));
  return made ? `#${CSS.escape(made.id)}` : null;
}

// What is changed elsewhere is said where it is seen, until it is shown.
const elsewhere = 'This was changed in another window. Send or take back what you typed to see it.';
function tellElsewhere() {
  speak(elsewhere);
  if (document.getElementById('elsewhere')) return;
  const line = document.createElement('p');
  line.id = line.className = 'elsewhere';
  // It is spoken already.
  line.setAttribute('aria-hidden', 'true');
  line.textContent = elsewhere;
  document.querySelector('.head')?.after(line);
}
function forgetElsewhere() {
  document.getElementById('elsewhere')?.remove();
  if (document.getElementById('voice')?.textContent === elsewhere) speak('');
}
// However it came to be shown: by itself, by a form, by a link.
document.addEventListener('setout:swapped', forgetElsewhere);

function put(text, url, said = null, form = null) {
  const fresh = new DOMParser().parseFromString(text, 'text/html'), words = said?.(fresh), made = madeBy(form, fresh);
  // What it was opened for is done: what it made is looked at now.
  if (made) form.closest('details').open = false;
  // What was made may have a page of another kind: an empty shop becomes one with a rack.
  const ids = page => [...page.querySelectorAll(swapped)].map(e => e.id).sort().join(' ');
  if (ids(fresh) !== ids(document)) {
    load(url, words ?? '', made);
    return;
  }
  // What comes by itself leaves told what is told.
  const again = form ? keepTyped(form) : keepTold();
  swap(fresh, null, form === null);
  again();
  document.title = fresh.title || document.title;
  // What the page is called above all that is swapped.
  const head = document.querySelector('h1'), called = fresh.querySelector('h1');
  if (head && called && head.textContent !== called.textContent) head.textContent = called.textContent;
  if (url && url !== location.href) history.pushState(null, '', url);
  document.dispatchEvent(new CustomEvent('setout:swapped', { detail: { isByItself: form === null } }));
  settle();
  if (words !== undefined) {
    document.dispatchEvent(new CustomEvent('setout:made', { detail: words }));
    speak(words);
  }
  if (made) give(document.querySelector(made));
}

// What a refusal tells: each slip with its field, and what would take it all the same. A page that is no refusal of ours tells itself.
function toldBy(text) {
  const page = new DOMParser().parseFromString(text, 'text/html'), told = [...page.querySelectorAll('[data-fault]:not([hidden])')];
  const remedy = p => p.nextElementSibling?.matches('[data-remedy]') ? ` ${p.nextElementSibling.textContent}` : '';
  return { slips: told.length > 0 ? told.map(p => ({ field: p.dataset.field ?? '', words: (p.textContent + remedy(p)).trim() })) : [{ field: '', words: text }], overrule: told.find(p => p.dataset.fault)?.dataset.fault ?? '' };
}

let sending = 0;
// How often each form was sent: why it was refused is told of what was sent last.
const sendings = new WeakMap();

/** Whether a form is under way: what it comes to is told in it. */
export const isSending = () => sending > 0;

document.addEventListener('submit', async event => {
  const form = event.target;
  if (!form.matches('[data-change-form]')) return;
  event.preventDefault();
  const fault = form.querySelector('.fault'), before = now(), fold = form.closest('[data-choice]')?.dataset.choice ?? '';
  const turn = (sendings.get(form) ?? 0) + 1;
  sendings.set(form, turn);
  sending++;
  try {
    const answer = await fetch(form.action, { method: 'POST', body: sent(form, event.submitter), headers: { Accept: 'text/html' } });
    const text = await answer.text();
    if (answer.ok) {
      put(text, answer.url, fresh => saidAfter(fresh, before, form), form);
      // What comes next has the keyboard: the next run, or the first field for one more of what was added.
      if (form.dataset.then) give(document.querySelector(form.dataset.then));
      else if (fold.startsWith('add-')) give(document.querySelector(`[data-choice="${CSS.escape(fold)}"] :is(input:not([type="hidden"]), select)`));
      return;
    }
    if (sendings.get(form) !== turn) return;
    const { slips, overrule } = toldBy(text), words = slips.map(s => s.words).join(' ');
    if (fault) fault.dataset.overrule = overrule;
    else speak(words);
    const field = blame(form, slips);
    // What is asked about is answered by a press of its own, never by the same key once more.
    const sure = overrule ? form.querySelector(`button.all-the-same[name="${CSS.escape(overrule)}"]`) : null;
    form.dispatchEvent(new CustomEvent('setout:refused', { bubbles: true, detail: words }));
    // One goes on typing in the field that is to blame; where none is, in a short form at once, else where one is: the words of the refusal are seen.
    (field ?? sure ?? (form.offsetHeight < innerHeight / 2 ? form.querySelector('input[type="text"]') : null))?.focus({ preventScroll: true });
    // With what it is told, and with what the field is called.
    (field ? document.getElementById(`${field.id}-fault`) : fault)?.scrollIntoView({ block: 'nearest' });
    if (field) (field.labels?.[0] ?? field).scrollIntoView({ block: 'nearest' });
  } catch {
    // The program is not there just now: what was typed stays, and sending it again is safe.
    blame(form, [{ field: '', words: 'The workbench does not answer. What you typed is still here; try again.' }]);
  } finally {
    sending--;
    if (isPutOff) catchUp();
  }
});

// One gesture, one step; where the page is not the place to type.
document.addEventListener('keydown', event => {
  const typing = event.target.closest?.('input, textarea, select');
  if (event.key === 'Escape' && typing?.form?.matches('[data-change-form]')) {
    typing.form.reset();
    forgive(typing.form);
    return;
  }
  if (typing || !(event.ctrlKey || event.metaKey)) return;
  const key = event.key.toLowerCase();
  const button = key === 'z' ? document.querySelector(event.shiftKey ? '[data-key-redo]' : '[data-key-undo]') : key === 'y' ? document.querySelector('[data-key-redo]') : null;
  if (!button) return;
  event.preventDefault();
  if (!button.disabled) button.form.requestSubmit(button);
});

// What is typed and not sent yet, and a field that is open over the drawing, are never swapped away.
const isHeld = () => document.documentElement.dataset.trial !== undefined || document.querySelector('#sizing:not([hidden])') !== null || [...document.querySelectorAll('form')].some(isDirty);

// Other windows: one stream, closed while nobody looks. It tells how things stand; a page tells which stand it shows, so that nothing is missed that came before the stream, or while a form was under way.
let stream = null, newest = null, isCatching = false, isPutOff = false, owed = 0;
const stand = () => document.documentElement.dataset.stand ?? '', edited = of => of.split(' ')[0];

async function catchUp() {
  if (isCatching) return;
  isCatching = true;
  try {
    for (let tried = null; newest !== null && newest !== tried && newest !== stand();) {
      tried = newest;
      if (isLeaving || !document.querySelector(swapped)) return;
      await quiet();
      isPutOff = sending > 0;
      // What was sent from here is shown already.
      if (isPutOff || newest === stand()) return;
      if (isHeld()) {
        owe();
        // A layout that is ready changes nothing of what is typed: it shows when that is sent or taken back.
        if (edited(newest) === edited(stand())) return;
        tellElsewhere();
        return;
      }
      await refresh();
    }
  } finally {
    isCatching = false;
  }
}

// What is not shown because something is typed is shown when that is taken back.
function owe() {
  clearInterval(owed);
  owed = setInterval(() => {
    if (sending > 0 || isHeld()) return;
    clearInterval(owed);
    catchUp();
  }, 300);
}

async function refresh() {
  try {
    // Somebody may have chosen something else meanwhile: then it is asked for anew.
    for (let before = null, text = ''; ; ) {
      before = shown();
      const answer = await fetch(location.href, { headers: { Accept: 'text/html' } });
      if (!answer.ok) return;
      text = await answer.text();
      await quiet();
      isPutOff = sending > 0;
      if (isPutOff) return;
      if (isHeld()) {
        owe();
        return;
      }
      if (shown() !== before) continue;
      put(text, null);
      return;
    }
  } catch {
    // It comes again when the program is there again.
  }
}

function listen() {
  if (document.hidden) {
    stream?.close();
    stream = null;
  } else if (!stream && document.querySelector(swapped)) {
    stream = new EventSource('/changes');
    stream.onmessage = event => {
      newest = event.data;
      catchUp();
    };
    stream.addEventListener('laying', event => {
      const words = JSON.parse(event.data);
      const lines = [...document.querySelectorAll('[data-laying]')];
      for (const line of lines) if (words[line.dataset.laying]) line.textContent = words[line.dataset.laying];
      // It may have become ready before this page began to listen.
      if (lines.some(l => !(l.dataset.laying in words)) && sending === 0) refresh();
    });
  }
}
document.addEventListener('visibilitychange', listen);
listen();
