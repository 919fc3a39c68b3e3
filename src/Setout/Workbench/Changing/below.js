// How many fields of a long form lie below the button that stays in sight, beside it: what is not seen is not passed over.
const isBelow = (field, at) => field.matches('input:not([type="hidden"]), select, textarea') && field.getClientRects().length > 0 && field.getBoundingClientRect().bottom > at + 1;

function count() {
  for (const row of document.querySelectorAll('details[open] .do-it')) {
    const at = row.getBoundingClientRect().top, many = [...row.closest('form').elements].filter(field => isBelow(field, at)).length;
    row.dataset.below = many === 0 ? '' : many === 1 ? '1 more field below' : `${many} more fields below`;
  }
}

let isDue = false;
function due() {
  if (isDue) return;
  isDue = true;
  requestAnimationFrame(() => {
    isDue = false;
    count();
  });
}
for (const kind of ['scroll', 'toggle', 'focusin']) document.addEventListener(kind, due, { capture: true, passive: true });
for (const kind of ['setout:swapped', 'setout:followed', 'setout:refused']) document.addEventListener(kind, due);
addEventListener('resize', due);
due();
