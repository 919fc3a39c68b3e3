// Lists of many short links are one stop of the Tab key each, with arrows inside. Without this script each link is a stop.
const lists = '[data-roves]';
const links = list => [...list.querySelectorAll('a[href]')];

function dress() {
  for (const list of document.querySelectorAll(lists)) {
    const all = links(list);
    const now = all.find(a => a === document.activeElement) ?? all.find(a => a.hasAttribute('aria-current')) ?? all[0];
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
  for (const other of links(link.closest(lists))) other.tabIndex = other === link ? 0 : -1;
});
document.addEventListener('setout:swapped', dress);
document.addEventListener('setout:followed', dress);
dress();
