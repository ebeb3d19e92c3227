// Runs being worked out: the words and the bar follow; when they end the page shows what came of them.
const panel = document.querySelector('[data-engine-progress]');
if (panel) {
  const words = panel.querySelector('[data-engine-words]');
  const bar = panel.querySelector('[data-engine-bar]');
  const ask = async () => {
    try {
      const now = await (await fetch(panel.dataset.engineProgress, { cache: 'no-store' })).json();
      if (!now.running) { location.reload(); return; }
      words.textContent = now.words;
      bar.max = now.total;
      bar.value = now.done;
    } catch { /* The workbench is away for a moment: asked again. */ }
    setTimeout(ask, 700);
  };
  setTimeout(ask, 500);
}
