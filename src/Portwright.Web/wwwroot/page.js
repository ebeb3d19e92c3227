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
