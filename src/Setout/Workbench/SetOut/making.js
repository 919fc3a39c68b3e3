// After a change the drawing is in view, and under it stands what was made: the form that asked for it may have stood far below.
document.addEventListener('setout:made', event => {
  const line = document.getElementById('made'), paper = document.querySelector('#drawing .paper-head');
  if (!line || !paper) return;
  line.textContent = event.detail;
  line.hidden = event.detail.length === 0;
  const shown = [...document.querySelectorAll('#drawing .drawing')].map(d => d.getBoundingClientRect()).find(b => b.height > 0);
  if (!shown || (shown.top >= 0 && shown.bottom <= innerHeight)) return;
  // With its tabs above it where there is room for both.
  const head = paper.getBoundingClientRect();
  scrollBy({ top: shown.bottom - head.top + line.offsetHeight < innerHeight ? head.top - 8 : shown.top - 8, behavior: 'instant' });
});
