// Tells why a form was refused: each slip beside the field that is to blame, what no field is to blame for where the form has room for it.
import { about } from './swapping.js';

const homes = new WeakMap();

const ownOf = form => form.querySelector('.fault:not([data-slip])');
const faultOf = field => document.getElementById(`${field.id}-fault`);
const othersOf = field => (field.getAttribute('aria-describedby') ?? '').split(' ').filter(id => id && id !== `${field.id}-fault`);
const describe = (field, ids) => ids.length > 0 ? field.setAttribute('aria-describedby', ids.join(' ')) : field.removeAttribute('aria-describedby');

/** The field of a form that can show a slip, by its name; null for none. */
export function fieldOf(form, name) {
  const named = name ? form.elements[name] : null, field = named instanceof RadioNodeList ? named[0] : named;
  return field?.id && field.type !== 'hidden' ? field : null;
}

/** Shows why, and nothing that was shown before; what is shown already is not said anew. Takes slips of the form { field, words } in the order of the fields; returns the first field that is to blame, or null. */
export function blame(form, slips) {
  const own = ownOf(form);
  if (!own) return null;
  const blamed = new Map(), rest = [];
  for (const { field: name, words } of slips) {
    const field = fieldOf(form, name);
    if (field && !blamed.has(field)) blamed.set(field, words);
    else if (!field) rest.push(words);
  }
  for (const field of form.querySelectorAll('[aria-invalid]')) if (blamed.get(field) !== faultOf(field)?.textContent) pardon(field);
  if (rest.length > 0) {
    for (const field of form.querySelectorAll('[aria-invalid]')) if (faultOf(field) === own) pardon(field);
    if (own.textContent !== rest.join(' ')) own.textContent = rest.join(' ');
    own.hidden = false;
  } else if (!own.id) own.hidden = true;
  for (const [field, words] of blamed) if (field.getAttribute('aria-invalid') !== 'true') tell(own, field, words);
  return blamed.keys().next().value ?? null;
}

function tell(own, field, words) {
  let fault = own;
  if (own.hidden) {
    if (!homes.has(own)) {
      const home = document.createComment('');
      own.before(home);
      homes.set(own, home);
    }
  } else {
    fault = own.cloneNode(false);
    fault.dataset.slip = '';
    delete fault.dataset.overrule;
  }
  fault.textContent = words;
  fault.hidden = false;
  fault.id = `${field.id}-fault`;
  // It may be folded away.
  for (let fold = field.closest('details'); fold && field.form.contains(fold); fold = fold.parentElement.closest('details')) fold.open = true;
  // A field and its button may stand in one line, and so may two fields.
  let place = field.closest('p, .note-value') ?? field;
  while (place.nextElementSibling?.matches('.fault:not([hidden])') && place.nextElementSibling !== fault) place = place.nextElementSibling;
  place.after(fault);
  field.setAttribute('aria-invalid', 'true');
  describe(field, [fault.id, ...othersOf(field)]);
}

// Takes back what was told of one field.
function pardon(field) {
  const fault = faultOf(field);
  field.removeAttribute('aria-invalid');
  describe(field, othersOf(field));
  if (!fault) return;
  const home = homes.get(fault);
  if (!home) {
    fault.remove();
    return;
  }
  fault.hidden = true;
  fault.removeAttribute('id');
  home.after(fault);
}

/** Takes back all that was told. */
export function forgive(form) {
  for (const field of form.querySelectorAll('[aria-invalid]')) pardon(field);
  const own = ownOf(form);
  if (own) own.hidden = true;
}

// What scripts write under the drawing: what was made, and why something stays where it is.
const lines = () => ['made', 'stays'].map(id => document.getElementById(id)).filter(line => line);

// What is told in a form just now, as it was told.
function slipsOf(form) {
  const own = ownOf(form), fields = [...form.querySelectorAll('[aria-invalid]')].map(field => ({ field: field.name, words: faultOf(field)?.textContent ?? '' }));
  return own && !own.hidden && !own.id ? [...fields, { field: '', words: own.textContent }] : fields;
}

// What is asked about one state is not asked about another.
const stateOf = form => form.elements.revision?.value;

/** What is told just now: it is told in the same places of a page that comes by itself, as if that had not come. */
export function keepTold() {
  const forms = () => [...document.querySelectorAll('[data-swap] form[data-change-form]')];
  const said = lines().filter(line => !line.hidden).map(line => [line.id, line.textContent]);
  const told = forms().map(form => ({ of: about(form), state: stateOf(form), slips: slipsOf(form), overrule: ownOf(form)?.dataset.overrule ?? '' })).filter(one => one.slips.length > 0);
  return () => {
    for (const [id, words] of said) {
      const line = document.getElementById(id);
      if (line) [line.hidden, line.textContent] = [false, words];
    }
    for (const { of, state, slips, overrule } of told) {
      const form = forms().find(f => about(f) === of && stateOf(f) === state), own = form && ownOf(form);
      if (!own) continue;
      own.dataset.overrule = overrule;
      blame(form, slips);
    }
  };
}

// Who mends a field is not told any longer what was wrong with it; the others keep theirs.
document.addEventListener('input', event => {
  const field = event.target, form = field.form;
  if (!form?.matches('[data-change-form]')) return;
  if (field.hasAttribute('aria-invalid')) pardon(field);
  const own = ownOf(form);
  if (own && !own.id) own.hidden = true;
});
