// The boxes of a morning check, one after another: value, Enter, next. What is typed is held in this browser until the check is in the record.
const prefix = 'portwright.check.';

class CheckRun extends HTMLElement {
  connectedCallback() {
    this.form = this.querySelector('form');
    this.key = prefix + this.dataset.key;
    // A check that was saved since has another key.
    for (const name of Object.keys(localStorage)) if (name.startsWith(prefix) && name !== this.key) localStorage.removeItem(name);
    this.fill();
    this.addEventListener('input', () => { this.keep(); this.tell(); });
    this.addEventListener('keydown', event => this.enter(event));
    this.tell();
  }

  boxes() { return [...this.querySelectorAll('input[type=text]')].filter(box => box.checkVisibility()); }
  readings() { return [...this.querySelectorAll('.check-run input[type=text]')]; }

  // A reading belongs to its range, plate and pressure, whatever place its box has now.
  nameOf(box) {
    if (!box.closest('.check-run')) return box.name;
    return ['plate', 'range', 'at'].map(part => this.form.elements[`${box.name}-${part}`].value).join('|');
  }
  fill() {
    let held;
    try { held = JSON.parse(localStorage.getItem(this.key) ?? '{}'); } catch { held = {}; }
    const given = {};
    for (const box of this.querySelectorAll('input[type=text]')) {
      const name = this.nameOf(box);
      const text = held[name]?.[given[name] ?? 0];
      given[name] = (given[name] ?? 0) + 1;
      if (text && box.value === '') box.value = text;
    }
  }
  keep() {
    const held = {};
    for (const box of this.querySelectorAll('input[type=text]')) (held[this.nameOf(box)] ??= []).push(box.value);
    localStorage.setItem(this.key, JSON.stringify(held));
  }

  enter(event) {
    if (event.key !== 'Enter' || event.isComposing || !event.target.matches('input[type=text]')) return;
    // While a question stands, Enter takes the likely answer.
    if (this.querySelector('.question')) return;
    event.preventDefault();
    const boxes = this.boxes();
    const last = boxes.findLast(box => box.closest('.check-run'));
    const next = event.target === last ? this.querySelector('[data-save]') : boxes[boxes.indexOf(event.target) + 1];
    (next ?? this.querySelector('[data-save]')).focus();
    next?.select?.();
  }

  tell() {
    const all = this.readings();
    const read = all.filter(box => box.value.trim() !== '');
    const leaks = read.filter(box => !this.form.elements[`${box.name}-plate`].value).length;
    this.querySelector('[data-count]').textContent = read.length === 0 ? '' : `Read: ${leaks} ${leaks === 1 ? 'leak' : 'leaks'}, ${read.length - leaks} ${read.length - leaks === 1 ? 'plate' : 'plates'}.`;
  }
}

customElements.define('check-run', CheckRun);
