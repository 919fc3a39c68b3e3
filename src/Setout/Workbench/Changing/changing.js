// Sends forms without leaving the page, shows what came of them beside the field, and follows what other windows change. Every form works without it.
const swapped = '[data-swap]';

function swap(text, url) {
  const fresh = new DOMParser().parseFromString(text, 'text/html');
  const active = document.activeElement?.id;
  const open = new Set([...document.querySelectorAll('details[data-choice][open]')].map(d => d.dataset.choice));
  for (const old of document.querySelectorAll(swapped)) {
    const next = fresh.getElementById(old.id);
    if (next) old.replaceWith(document.adoptNode(next));
  }
  for (const details of document.querySelectorAll('details[data-choice]')) if (open.has(details.dataset.choice)) details.open = true;
  document.title = fresh.title || document.title;
  if (url && url !== location.href) history.pushState(null, '', url);
  if (active) document.getElementById(active)?.focus({ preventScroll: true });
}

function say(words) {
  let voice = document.getElementById('voice');
  if (!voice) {
    voice = document.createElement('p');
    voice.id = 'voice';
    voice.className = 'unseen';
    voice.setAttribute('role', 'status');
    document.body.append(voice);
  }
  voice.textContent = words;
}

const isDirty = form => [...form.elements].some(e => (e.type === 'text' || e.tagName === 'TEXTAREA') && e.value !== e.defaultValue);
let sending = 0;

document.addEventListener('submit', async event => {
  const form = event.target;
  if (!form.matches('[data-change-form]')) return;
  event.preventDefault();
  const fault = form.querySelector('.fault');
  sending++;
  try {
    const answer = await fetch(form.action, { method: 'POST', body: new URLSearchParams(new FormData(form)), headers: { Accept: 'text/html' } });
    const text = await answer.text();
    if (answer.ok) {
      swap(text, answer.url);
      say(document.querySelector('#history [role="status"]')?.textContent ?? '');
      return;
    }
    const page = new DOMParser().parseFromString(text, 'text/html');
    const words = page.querySelector('[data-fault]') ? [...page.querySelectorAll('[data-fault], [data-fault] + p')].map(p => p.textContent).join(' ') : text;
    if (fault) {
      fault.textContent = words;
      fault.hidden = false;
    } else say(words);
    form.querySelector('input[type="text"]')?.focus();
  } catch {
    // The program is not there just now: what was typed stays, and sending it again is safe.
    if (fault) {
      fault.textContent = 'The workbench does not answer. What you typed is still here; try again.';
      fault.hidden = false;
    }
  } finally {
    sending--;
  }
});

// One gesture, one step; where the page is not the place to type.
document.addEventListener('keydown', event => {
  const typing = event.target.closest?.('input, textarea, select');
  if (event.key === 'Escape' && typing?.form?.matches('[data-change-form]')) {
    typing.form.reset();
    typing.form.querySelector('.fault')?.setAttribute('hidden', '');
    return;
  }
  if (typing || !(event.ctrlKey || event.metaKey)) return;
  const key = event.key.toLowerCase();
  const button = key === 'z' ? document.querySelector(event.shiftKey ? '[data-key-redo]' : '[data-key-undo]') : key === 'y' ? document.querySelector('[data-key-redo]') : null;
  if (!button) return;
  event.preventDefault();
  if (!button.disabled) button.form.requestSubmit(button);
});

// Other windows: one stream, closed while nobody looks.
let stream = null, stand = null;
async function follow(now) {
  if (stand === now) return;
  const first = stand === null;
  stand = now;
  if (first || sending > 0 || !document.querySelector(swapped)) return;
  if ([...document.querySelectorAll('form')].some(isDirty)) {
    say('This was changed in another window. Send or take back what you typed to see it.');
    document.getElementById('history')?.classList.add('is-elsewhere');
    return;
  }
  try {
    const answer = await fetch(location.href, { headers: { Accept: 'text/html' } });
    if (answer.ok) swap(await answer.text(), null);
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
    stream.onmessage = event => follow(event.data);
  }
}
document.addEventListener('visibilitychange', listen);
listen();
