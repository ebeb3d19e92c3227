// Starts the live connection. It comes back by itself, however long the workbench was away.
(() => {
  const modal = document.getElementById('components-reconnect-modal');
  modal.addEventListener('components-reconnect-state-changed', event => {
    const state = event.detail.state;
    document.documentElement.dataset.line = state === 'hide' ? 'up' : 'down';
    if (state !== 'rejected' && state !== 'resume-failed') return;
    // The server was started again and knows this page no longer. A page with an entry box goes on without the live line: loading it
    // anew would swallow a key of a number being typed.
    document.documentElement.dataset.line = 'up';
    if (!document.dispatchEvent(new CustomEvent('line-lost', { cancelable: true }))) return;
    location.reload();
  });
  Blazor.start({
    ssr: { disableDomPreservation: true },
    circuit: {
      reconnectionOptions: { maxRetries: 1000000, retryIntervalMilliseconds: n => (n < 40 ? 250 : 2000) },
    },
  });
})();
