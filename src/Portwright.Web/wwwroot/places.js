// Touching a place in the section asks for the number there at once: no page is fetched between touch and number.
const form = document.querySelector('[data-place-form]');
const drawing = document.querySelector('[data-places]');
if (form && drawing) {
  const value = form.querySelector('[data-place-value]');
  const words = form.querySelector('[data-place-words]');
  const box = form.querySelector('.box input');
  const station = document.body.querySelector('[data-station]')?.dataset.station ?? '';
  const ask = (place, said, mark) => {
    value.value = place;
    words.textContent = said;
    drawing.querySelector('.touched')?.classList.remove('touched');
    mark?.classList.add('touched');
    for (const held of form.querySelectorAll('.box input, .steady button')) held.disabled = false;
    if (box) { box.value = ''; box.focus({ preventScroll: true }); form.scrollIntoView({ block: 'nearest' }); }
  };
  drawing.addEventListener('click', event => {
    const link = event.target.closest('a');
    const place = link && new URL(link.href?.baseVal ?? link.href, location.href).searchParams.get('place');
    if (!place || event.ctrlKey || event.metaKey || event.shiftKey) return;
    event.preventDefault();
    const name = link.getAttribute('aria-label') ?? place;
    ask(place, station ? `${station}, ${name}` : name, link);
  });
  form.addEventListener('click', event => {
    const out = event.target.closest('[data-place]');
    if (!out) return;
    event.preventDefault();
    ask(out.dataset.place, out.dataset.words, null);
  });
}

// A chosen photo or clip is kept without another touch; without this script its button does it.
for (const file of document.querySelectorAll('[data-send-when-chosen]')) {
  file.addEventListener('change', () => { if (file.files.length) file.form.requestSubmit(); });
}
