// What the last step cost, asked for when the page is there; and what one compares with. That is kept with the person who looks, in the browser: the piece is not changed by it.
import { keepTold } from './blaming.js';
import { isSending } from './changing.js';
import { isDirty, quiet, settle, shown, swap } from './swapping.js';

const name = () => `against ${location.pathname}`;
let asked = null;

async function tell() {
  const cost = document.getElementById('cost');
  if (!cost || document.documentElement.dataset.trial !== undefined) return;
  const pin = cost.querySelector('[data-pin]'), line = cost.querySelector('[data-cost-line]'), against = localStorage.getItem(name());
  pin.hidden = false;
  pin.textContent = against ? 'Compare with the step before again' : 'Compare with this from now on';
  asked?.abort();
  const mine = asked = new AbortController();
  cost.classList.add('is-behind');
  try {
    const url = new URL(cost.dataset.href, location.href);
    if (against) url.searchParams.set('against', against);
    const answer = await fetch(url, { signal: mine.signal, headers: { Accept: 'text/html' } });
    if (!answer.ok) return;
    const words = new DOMParser().parseFromString(await answer.text(), 'text/html').querySelector('[data-cost-line]')?.textContent;
    if (mine.signal.aborted || !words) return;
    line.textContent = words;
    cost.classList.remove('is-behind');
  } catch {
    // Asked again after the next step.
  }
}

// What the layouts find is noted when they are there.
let tries = 0, soon = null;
async function look() {
  if (!document.querySelector('#margin .waiting') || document.documentElement.dataset.trial !== undefined || document.hidden) return;
  try {
    const before = shown(), answer = await fetch(location.href, { headers: { Accept: 'text/html' } });
    const fresh = answer.ok ? new DOMParser().parseFromString(await answer.text(), 'text/html') : null;
    await quiet();
    // What a form comes to is told in it.
    const isHeld = isSending() || document.documentElement.dataset.trial !== undefined || [...document.querySelectorAll('#margin form')].some(isDirty);
    if (fresh?.getElementById('margin')?.querySelector('.waiting') === null && !isHeld && shown() === before) {
      const again = keepTold();
      swap(fresh, 'margin', true);
      again();
      settle();
    }
  } catch {
    // Looked for again.
  }
  wait();
}
function wait() {
  clearTimeout(soon);
  if (document.querySelector('#margin .waiting') && ++tries < 20) soon = setTimeout(look, 700 * tries);
}
document.addEventListener('setout:swapped', () => {
  tries = 0;
  wait();
});
wait();

document.addEventListener('click', event => {
  const pin = event.target.closest?.('[data-pin]');
  if (!pin) return;
  if (localStorage.getItem(name())) localStorage.removeItem(name());
  else localStorage.setItem(name(), pin.dataset.pin);
  tell();
});
document.addEventListener('setout:swapped', tell);
tell();
