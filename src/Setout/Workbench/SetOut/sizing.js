// A real field over the figure of a dimension. Enter takes what is typed, Escape lets it be, Tab goes on to the next size; neither zoom nor place of the drawing changes.
import { forgive } from './blaming.js';
import { show, sizeUrl } from './workbench.js';
import { letBe } from './trying.js';
import { speak } from './swapping.js';

let opened = null, afterwards = null;

const room = () => document.getElementById('room');
const form = () => document.getElementById('sizing');
const sizes = () => JSON.parse(room()?.dataset.sizes ?? '[]');
const bare = key => key.split('#')[0];
export const figure = key => [...(room()?.querySelectorAll(`.drawing [data-key="${CSS.escape(key)}"] text`) ?? [])].find(t => t.getBoundingClientRect().width > 0);

function place() {
  const field = form();
  if (!opened || !field || field.hidden) return;
  const text = figure(opened.key), paper = document.getElementById('drawing').getBoundingClientRect();
  const at = (text ?? room()).getBoundingClientRect();
  const input = document.getElementById('sizing-size');
  const left = at.left + at.width / 2 - paper.left - field.offsetWidth / 2;
  field.style.left = `${Math.max(4, Math.min(left, paper.width - field.offsetWidth - 4))}px`;
  field.style.top = `${Math.max(4, at.top + at.height / 2 - paper.top - (input.hidden ? 0 : input.offsetTop + input.offsetHeight / 2))}px`;
}

// What is told in it makes it larger: it stays on the paper.
const grown = new ResizeObserver(place);

function fill(given) {
  const field = form(), input = document.getElementById('sizing-size');
  field.elements.key.value = given.at;
  field.elements.choice.value = given.choice;
  input.name = `field-${given.field}`;
  input.hidden = false;
  input.defaultValue = input.value = given.text;
  input.placeholder = given.text ? '' : 'equal share';
  document.getElementById('sizing-words').textContent = `${given.words}, on the drawing`;
  document.getElementById('sizing-usual').textContent = given.usual;
  forgive(field);
  input.focus({ preventScroll: true });
  input.select();
}

/// Opens the field of a dimension; false where it is none.
export function open(key) {
  const size = sizes().find(s => bare(s.key) === bare(key)), field = form();
  if (!size || !field) return false;
  close();
  opened = { key: size.key };
  field.hidden = false;
  grown.observe(field);
  field.querySelector('.from')?.remove();
  if (size.own) fill(size.own);
  else {
    const input = field.querySelector('input[type="text"]');
    input.hidden = true;
    const isAny = size.from.length > 0;
    document.getElementById('sizing-words').textContent = isAny ? 'This size follows from others. Give one of these:' : 'This size follows from the rules.';
    document.getElementById('sizing-usual').textContent = isAny ? '' : 'Its working says how; it cannot be given by itself. Escape closes this.';
    const list = document.createElement('ul');
    list.className = 'from';
    for (const given of size.from) {
      const item = document.createElement('li'), button = document.createElement('button');
      button.type = 'button';
      button.textContent = given.text ? `${given.words}: ${given.text}` : given.words;
      button.addEventListener('click', () => {
        list.remove();
        fill(given);
        place();
      });
      item.append(button);
      list.append(item);
    }
    field.append(list);
    field.tabIndex = -1;
    (list.querySelector('button') ?? field).focus({ preventScroll: true });
    speak(document.getElementById('sizing-words').textContent);
  }
  place();
  return true;
}

function close() {
  const field = form();
  opened = null;
  grown.disconnect();
  if (field) {
    field.hidden = true;
    // What was typed is let be: a page that waits for that may come.
    const input = field.querySelector('input[type="text"]');
    input.value = input.defaultValue;
    field.querySelector('.from')?.remove();
  }
}

async function choose(key) {
  afterwards = null;
  const url = sizeUrl(bare(key));
  url.hash = '';
  if (new URL(location.href).searchParams.get('size') !== bare(key)) await show(url, true, true);
  open(key);
}

function next(by) {
  const all = sizes(), at = all.findIndex(s => s.key === opened.key);
  return all[at + by]?.key ?? null;
}

// A click on a dimension opens it. Other things of the drawing are chosen as before.
document.addEventListener('click', event => {
  if (event.button !== 0 || event.ctrlKey || event.metaKey || event.shiftKey || event.altKey || event.defaultPrevented) return;
  const group = event.target.closest?.('#room [data-key]');
  if (!group || !sizes().some(s => bare(s.key) === bare(group.dataset.key))) return;
  event.preventDefault();
  event.stopImmediatePropagation();
  choose(group.dataset.key);
}, true);

document.addEventListener('setout:open-size', event => choose(event.detail));

document.addEventListener('keydown', event => {
  const field = form();
  if (!opened || !field || !field.contains(event.target)) return;
  if (event.key === 'Escape') {
    event.preventDefault();
    event.stopPropagation();
    letBe();
    close();
    room().focus({ preventScroll: true });
    return;
  }
  const input = field.querySelector('input[type="text"]');
  if (event.key === 'Tab') {
    const key = next(event.shiftKey ? -1 : 1);
    if (!key) return;
    event.preventDefault();
    if (input.hidden || input.value === input.defaultValue) {
      letBe();
      choose(key);
    } else {
      afterwards = key;
      field.requestSubmit();
    }
  } else if (event.key === 'Enter' && !input.hidden && event.target === input && input.value === input.defaultValue) {
    event.preventDefault();
    close();
    room().focus({ preventScroll: true });
  }
}, true);

// After it was taken: on to the next, or back to the drawing.
document.addEventListener('setout:swapped', () => {
  const was = opened, to = afterwards;
  opened = null;
  afterwards = null;
  if (to) choose(to);
  else if (was) room()?.focus({ preventScroll: true });
});
document.addEventListener('setout:refused', () => { afterwards = null; });
document.addEventListener('pointerdown', event => {
  const field = form();
  if (!opened || !field || field.contains(event.target)) return;
  const input = field.querySelector('input[type="text"]');
  // What was typed stays until it is taken or let be.
  if (input.hidden || input.value === input.defaultValue) close();
});
document.addEventListener('setout:drawn', place);
addEventListener('resize', place);
