// Starts the live connection. It comes back by itself, however long the workbench was away.
(() => {
  const modal = document.getElementById('components-reconnect-modal');
  modal.addEventListener('components-reconnect-state-changed', event => {
    const state = event.detail.state;
    document.documentElement.dataset.line = state === 'hide' ? 'up' : 'down';
    // The server was started again and knows this page no longer: what is typed or pending is kept by the entry box itself.
    if (state === 'rejected' || state === 'resume-failed') location.reload();
  });
  Blazor.start({
    ssr: { disableDomPreservation: true },
    circuit: {
      reconnectionOptions: { maxRetries: 1000000, retryIntervalMilliseconds: n => (n < 40 ? 250 : 2000) },
    },
  });
})();
