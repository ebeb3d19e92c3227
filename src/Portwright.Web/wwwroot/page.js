// Small manners of every page: an opened word closes by Escape or a touch elsewhere; a form is sent once.
document.addEventListener('click', event => {
  for (const open of document.querySelectorAll('details.word[open]')) {
    if (!open.contains(event.target)) open.open = false;
  }
});
document.addEventListener('keydown', event => {
  if (event.key !== 'Escape') return;
  for (const open of document.querySelectorAll('details.word[open]')) {
    open.open = false;
    open.querySelector('summary').focus();
  }
});
document.addEventListener('submit', event => {
  const form = event.target;
  if (form.dataset.sent) { event.preventDefault(); return; }
  form.dataset.sent = 'yes';
  setTimeout(() => { delete form.dataset.sent; }, 4000);
});
// Coming back by the back button shows the page as it was left: its forms may be sent again.
window.addEventListener('pageshow', () => { for (const form of document.forms) delete form.dataset.sent; });

// Readings that wait in this browser: every page says so, because they are only sent from the page of their sweep.
function waiting() {
  const sweeps = new Map();
  const here = document.querySelector('sweep-entry')?.dataset.sweep;
  for (let i = 0; i < localStorage.length; i++) {
    const [, kind, sweep] = /^portwright\.(pending|refused|question)\.([0-9a-f-]{36})\./.exec(localStorage.key(i)) ?? [];
    if (!kind || sweep === here) continue;
    const held = sweeps.get(sweep) ?? { pending: [], refused: [], question: [] };
    held[kind].push(localStorage.key(i));
    sweeps.set(sweep, held);
  }
  return sweeps;
}
function tellWaiting() {
  document.querySelector('aside.held')?.remove();
  const sweeps = waiting();
  if (sweeps.size === 0) return;
  const aside = document.createElement('aside');
  aside.className = 'note held';
  aside.setAttribute('aria-label', 'Readings not saved yet');
  for (const [sweep, held] of sweeps) {
    const line = document.createElement('p');
    const link = document.createElement('a');
    // Air and leak were asked before the first of them was typed.
    link.href = `/sweep/${sweep}?skip=leak`;
    link.textContent = localStorage.getItem(`portwright.name.${sweep}`) ?? 'a sweep';
    const wait = held.pending.length;
    const asked = held.question.length;
    const cure = wait > 0 ? 'Open it to save them.' : asked > 0 ? 'Open it to answer.' : 'Open it to type them again.';
    const say = wait === 0 && asked > 0 ? asked === 1 ? '1 reading is asked about on ' : `${asked} readings are asked about on `
      : wait === 1 ? '1 reading waits to be saved on ' : wait > 1 ? `${wait} readings wait to be saved on ` : held.refused.length === 1 ? '1 reading was not taken on ' : `${held.refused.length} readings were not taken on `;
    line.append(say, link, `. ${wait + held.refused.length === 1 ? cure.replace('them', 'it') : cure}`);
    aside.append(line, listed(sweep, [...held.pending, ...held.question, ...held.refused].sort()));
  }
  document.querySelector('main')?.before(aside);
}
// The numbers themselves, for where their sweep is gone (an older record was restored) and they belong on paper or nowhere.
function listed(sweep, names) {
  const details = document.createElement('details');
  const summary = document.createElement('summary');
  summary.textContent = 'What is held';
  const list = document.createElement('ul');
  for (const name of names) {
    const item = document.createElement('li');
    try { const e = JSON.parse(localStorage.getItem(name)); item.textContent = `lift ${e.lift}: ${e.text}, typed ${e.at.slice(0, 16).replace('T', ' ')}`; } catch { item.textContent = 'cannot be read any more'; }
    list.append(item);
  }
  const drop = document.createElement('button');
  drop.type = 'button';
  drop.className = 'button';
  drop.textContent = names.length === 1 ? 'Leave this reading out for good' : 'Leave these readings out for good';
  drop.addEventListener('click', () => {
    for (const name of [...names, `portwright.name.${sweep}`]) localStorage.removeItem(name);
    tellWaiting();
  });
  details.append(summary, list, drop);
  return details;
}
tellWaiting();
window.addEventListener('storage', tellWaiting);
window.addEventListener('pageshow', event => { if (event.persisted) tellWaiting(); });
