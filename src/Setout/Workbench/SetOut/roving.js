// Lists of many short links are one stop of the Tab key each, with arrows inside. Without this script each link is a stop.
const lists = '[data-roves]';
const links = list => [...list.querySelectorAll('a[href]')];

// Where one was in each list: a list of a page that comes by itself is come back to at the same place.
const places = new Map();
function nameOf(list) {
  const around = list.closest('[data-swap]') ?? document.body;
  return `${around.id} ${[...around.querySelectorAll(lists)].indexOf(list)}`;
}
function placeIn(list, all) {
  const { at, href } = places.get(nameOf(list)) ?? {};
  return all[at]?.getAttribute('href') === href ? all[at] : undefined;
}

function dress(event) {
  if (event?.type === 'setout:swapped' && !event.detail?.isByItself) places.clear();
  for (const list of document.querySelectorAll(lists)) {
    const all = links(list);
    const now = all.find(a => a === document.activeElement) ?? placeIn(list, all) ?? all.find(a => a.hasAttribute('aria-current')) ?? all[0];
    for (const link of all) link.tabIndex = link === now ? 0 : -1;
  }
}

// Up and down go from line to line, to the link that stands at the same place of it; in a list of one line they go on like left and right.
function to(all, at, key) {
  if (key === 'Home') return all[0];
  if (key === 'End') return all.at(-1);
  const by = key === 'ArrowRight' || key === 'ArrowDown' ? 1 : -1;
  if (key === 'ArrowLeft' || key === 'ArrowRight') return all[at + by];
  const line = a => a.closest('li'), lines = [...new Set(all.map(line))], own = all.filter(a => line(a) === line(all[at]));
  const next = lines[lines.indexOf(line(all[at])) + by], there = all.filter(a => line(a) === next);
  return there[Math.min(own.indexOf(all[at]), there.length - 1)];
}

document.addEventListener('keydown', event => {
  const link = event.target.closest?.(`${lists} a[href]`);
  if (!link || !/^(Arrow|Home$|End$)/.test(event.key) || event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return;
  const all = links(link.closest(lists)), next = to(all, all.indexOf(link), event.key);
  event.preventDefault();
  next?.focus();
});
document.addEventListener('focusin', event => {
  const link = event.target.closest?.(`${lists} a[href]`);
  if (!link) return;
  const list = link.closest(lists), all = links(list);
  places.set(nameOf(list), { at: all.indexOf(link), href: link.getAttribute('href') });
  for (const other of all) other.tabIndex = other === link ? 0 : -1;
});
document.addEventListener('setout:swapped', dress);
document.addEventListener('setout:followed', dress);
dress();
