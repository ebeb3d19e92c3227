// Turning the crank: everything is put where the page's own numbers say; nothing is worked out here.
const cycle = document.querySelector('[data-cycle]');
const source = document.querySelector('[data-cycle-motion]');
if (cycle && source) {
  const motion = JSON.parse(source.textContent);
  const scrub = cycle.querySelector('[data-cycle-scrub]');
  const range = scrub.querySelector('input');
  const words = cycle.querySelector('[data-cycle-words]');
  const play = scrub.querySelector('[data-cycle-play]');
  // Pipes and trace, each in the wide and the narrow layout.
  const layouts = ['.pw-wide', '.pw-narrow'].map((kind, i) => {
    const find = key => [...cycle.querySelectorAll(`${kind} [data-key="${key}"]`)];
    return {
      moves: motion.layouts[i],
      cells: key => find(key).flatMap(g => [...g.querySelectorAll('path[fill]')]),
      piston: find('piston'), intakeValve: find('intake-valve'), exhaustValve: find('exhaust-valve'), cursor: find('cursor'),
    };
  });
  for (const l of layouts) Object.assign(l, { intake: l.cells('intake-gas'), exhaust: l.cells('exhaust-gas'), cylinder: l.cells('cylinder-gas') });
  const paint = (cells, letters) => cells.forEach((cell, i) => cell.setAttribute('fill', motion.palette[letters.charCodeAt(i) - 97]));
  const put = (marks, x, y) => marks.forEach(m => m.setAttribute('transform', `translate(${x} ${y})`));
  const show = frame => {
    for (const l of layouts) {
      paint(l.intake, motion.intake[frame]);
      paint(l.exhaust, motion.exhaust[frame]);
      paint(l.cylinder, motion.cylinder[frame]);
      put(l.piston, 0, l.moves.piston[frame]);
      put(l.intakeValve, 0, l.moves.intakeValve[frame]);
      put(l.exhaustValve, 0, l.moves.exhaustValve[frame]);
      put(l.cursor, l.moves.cursor[frame], 0);
    }
    words.textContent = motion.words[frame];
    range.setAttribute('aria-valuetext', motion.words[frame]);
  };
  range.addEventListener('input', () => { stop(); show(range.valueAsNumber); });
  let turning = 0;
  const stop = () => { clearInterval(turning); turning = 0; play.textContent = 'Turn the crank'; };
  play.addEventListener('click', () => {
    if (turning) { stop(); return; }
    play.textContent = 'Hold it';
    turning = setInterval(() => { range.value = (range.valueAsNumber + 1) % motion.words.length; show(range.valueAsNumber); }, 50);
  });
  // Who wants no motion turns the crank by hand.
  play.hidden = matchMedia('(prefers-reduced-motion: reduce)').matches;
  scrub.hidden = false;
  show(range.valueAsNumber);
}
