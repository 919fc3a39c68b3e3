// Tells why a form was refused: beside the field that is to blame, where one is, else where the form has room for it.
const homes = new WeakMap();

/** Shows why; returns the field that is to blame, or null. */
export function blame(form, words, name = '') {
  forgive(form);
  const fault = form.querySelector('.fault');
  if (!fault) return null;
  fault.textContent = words;
  fault.hidden = false;
  // Of several of one name that is to blame which was left empty, else the first.
  const named = name ? form.elements[name] : null, field = named instanceof RadioNodeList ? [...named].find(e => e.value.trim() === '') ?? named[0] : named;
  if (!field?.id || field.type === 'hidden') return null;
  // It may be folded away.
  for (let fold = field.closest('details'); fold && form.contains(fold); fold = fold.parentElement.closest('details')) fold.open = true;
  if (!homes.has(fault)) {
    const home = document.createComment('');
    fault.before(home);
    homes.set(fault, home);
  }
  // A field and its button may stand in one line.
  (field.closest('p, .note-value') ?? field).after(fault);
  fault.id ||= `${field.id}-fault`;
  field.setAttribute('aria-invalid', 'true');
  field.dataset.described = field.getAttribute('aria-describedby') ?? '';
  field.setAttribute('aria-describedby', `${fault.id} ${field.dataset.described}`.trim());
  return field;
}

/** Takes back what was told. */
export function forgive(form) {
  const fault = form.querySelector('.fault');
  for (const field of form.querySelectorAll('[aria-invalid]')) {
    field.removeAttribute('aria-invalid');
    if (field.dataset.described) field.setAttribute('aria-describedby', field.dataset.described);
    else field.removeAttribute('aria-describedby');
    delete field.dataset.described;
  }
  if (!fault) return;
  fault.hidden = true;
  homes.get(fault)?.after(fault);
}

// Who mends it is not told any longer what was wrong.
document.addEventListener('input', event => {
  const form = event.target.form;
  if (form?.matches('[data-change-form]') && form.querySelector('.fault:not([hidden])')) forgive(form);
});
