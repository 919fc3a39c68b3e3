// Goes to the line of a text that its address or a note names. Without this script the text stands at its beginning.

const text = document.querySelector('[data-text-form] textarea');

function go(line) {
  const lines = text.value.split('\n'), at = Math.min(line, lines.length) - 1;
  const from = lines.slice(0, at).reduce((sum, one) => sum + one.length + 1, 0);
  text.focus({ preventScroll: true });
  text.setSelectionRange(from, from + lines[at].length);
  text.scrollIntoView({ block: 'nearest' });
  // A few lines before it stay in sight.
  text.scrollTop = Math.max(0, at - 3) * parseFloat(getComputedStyle(text).lineHeight);
}

const lineOf = url => Number(url.searchParams.get('line'));
if (text && lineOf(new URL(location.href)) > 0) go(lineOf(new URL(location.href)));
// On the page of the text itself nothing is loaded anew: what is half changed stays.
document.addEventListener('click', event => {
  const link = event.target.closest?.('a[data-line]');
  if (!text || !link || new URL(link.href).pathname !== location.pathname) return;
  event.preventDefault();
  go(lineOf(new URL(link.href)));
});
