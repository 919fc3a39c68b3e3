// The outline as a tree for the keyboard: up and down, right opens, left closes, Home, End, the first letters of a name. Without this script it is a list of links, all open.

// Where one was is kept over a page that comes by itself.
let letters = '', last = 0, open = new Map(), place = null;

const tree = () => document.querySelector('#outline .outline-tree');
const links = () => [...tree().querySelectorAll('a')].filter(a => !a.closest('[data-branch="closed"] > ul'));
const item = link => link.closest('li');
const id = link => link.getAttribute('href');

function paint(branch) {
  const link = branch.querySelector(':scope > a');
  if (branch.dataset.branch) link.setAttribute('aria-expanded', String(branch.dataset.branch === 'open'));
}

function dress(event) {
  if (event?.type === 'setout:swapped' && !event.detail?.isByItself) place = null;
  const root = tree();
  if (!root || root.dataset.dressed !== undefined) return;
  root.dataset.dressed = '';
  const list = root.querySelector('ul');
  list.setAttribute('role', 'tree');
  list.setAttribute('aria-labelledby', 'outline-title');
  for (const inner of root.querySelectorAll('ul ul')) inner.setAttribute('role', 'group');
  for (const branch of root.querySelectorAll('li')) {
    branch.setAttribute('role', 'none');
    const link = branch.querySelector(':scope > a');
    link.setAttribute('role', 'treeitem');
    link.tabIndex = -1;
    const group = branch.querySelector(':scope > ul');
    if (group) {
      // A group belongs to its item although it stands beside it.
      group.id = `in-${id(link).replace(/[^A-Za-z0-9-]/g, '_')}`;
      link.setAttribute('aria-owns', group.id);
    }
    if (branch.dataset.branch && open.has(id(link))) branch.dataset.branch = open.get(id(link));
    paint(branch);
  }
  const first = [...root.querySelectorAll('a')].find(a => id(a) === place) ?? root.querySelector('a[aria-current]') ?? root.querySelector('a');
  if (first) (links().includes(first) ? first : links()[0]).tabIndex = 0;
}

function go(link) {
  if (!link) return;
  for (const old of tree().querySelectorAll('a[tabindex="0"]')) old.tabIndex = -1;
  link.tabIndex = 0;
  link.focus();
}

function turn(branch, way) {
  branch.dataset.branch = way;
  open.set(id(branch.querySelector(':scope > a')), way);
  paint(branch);
}

document.addEventListener('keydown', event => {
  const link = event.target.closest?.('#outline [role="treeitem"]');
  if (!link || event.ctrlKey || event.metaKey || event.altKey) return;
  const all = links(), at = all.indexOf(link), branch = item(link);
  if (event.key === 'ArrowDown') go(all[at + 1]);
  else if (event.key === 'ArrowUp') go(all[at - 1]);
  else if (event.key === 'Home') go(all[0]);
  else if (event.key === 'End') go(all.at(-1));
  else if (event.key === 'ArrowRight') {
    if (branch.dataset.branch === 'closed') turn(branch, 'open');
    else if (branch.dataset.branch === 'open') go(branch.querySelector(':scope > ul a'));
  } else if (event.key === 'ArrowLeft') {
    if (branch.dataset.branch === 'open') turn(branch, 'closed');
    else go(branch.parentElement.closest('li')?.querySelector(':scope > a'));
  } else if (event.key === ' ' && (letters === '' || event.timeStamp - last > 700)) link.click();
  else if (event.key.length === 1) {
    letters = event.timeStamp - last > 700 ? event.key.toLowerCase() : letters + event.key.toLowerCase();
    last = event.timeStamp;
    const from = letters.length === 1 ? at + 1 : at, turned = [...all.slice(from), ...all.slice(0, from)];
    go(turned.find(a => a.textContent.trim().toLowerCase().startsWith(letters)));
  } else return;
  event.preventDefault();
});

// The sign before a branch opens and closes it by mouse.
document.addEventListener('click', event => {
  const branch = event.target.closest?.('#outline [data-branch]');
  if (!branch || event.target.closest('a') || event.target !== branch) return;
  turn(branch, branch.dataset.branch === 'open' ? 'closed' : 'open');
});
document.addEventListener('focusin', event => {
  const link = event.target.closest?.('#outline [role="treeitem"]');
  if (!link) return;
  place = id(link);
  for (const old of tree().querySelectorAll('a[tabindex="0"]')) if (old !== link) old.tabIndex = -1;
  link.tabIndex = 0;
});
document.addEventListener('setout:swapped', dress);
document.addEventListener('setout:followed', dress);
dress();
