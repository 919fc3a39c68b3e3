// Tells what of a new piece cannot be taken without leaving the page. The answer has the same form with each slip beside its field, so all works without it.
const own = '[data-begin-form]';

document.addEventListener('submit', async event => {
  const form = event.target;
  if (!form.matches(own)) return;
  event.preventDefault();
  const button = form.querySelector('button[type="submit"]');
  try {
    button.setAttribute('aria-disabled', 'true');
    // What it begins is heard of here too, and is no other window's.
    form.dataset.sending = '';
    const answer = await fetch(form.action, { method: 'POST', body: new URLSearchParams(new FormData(form)), headers: { Accept: 'text/html' } });
    if (answer.ok) {
      location.assign(answer.url);
      // Until that page is there.
      await new Promise(() => {});
    }
    const text = await answer.text(), told = new DOMParser().parseFromString(text, 'text/html').querySelector(own);
    if (!told) {
      say(form, text);
      return;
    }
    form.replaceWith(document.adoptNode(told));
    const first = told.querySelector('[aria-invalid="true"]');
    // Where no field is to blame the words are heard by themselves, and what was typed is sent from the button.
    (first ?? told.querySelector('button[type="submit"]')).focus();
  } catch {
    say(form, 'The workbench does not answer. What you typed is still here; try again.');
  } finally {
    button.removeAttribute('aria-disabled');
    delete form.dataset.sending;
  }
});

function say(form, words) {
  const fault = form.querySelector('[data-fault]');
  fault.textContent = words;
  fault.hidden = false;
}

// Who mends a field is not told any longer what was wrong with it; the others keep theirs.
document.addEventListener('input', event => {
  const field = event.target;
  if (!field.form?.matches(own) || field.getAttribute('aria-invalid') !== 'true') return;
  const fault = document.getElementById(`${field.id}-fault`);
  const others = (field.getAttribute('aria-describedby') ?? '').split(' ').filter(id => id && id !== fault?.id);
  field.removeAttribute('aria-invalid');
  if (others.length > 0) field.setAttribute('aria-describedby', others.join(' '));
  else field.removeAttribute('aria-describedby');
  fault?.remove();
});
