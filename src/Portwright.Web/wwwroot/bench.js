// The entry box at the bench. The browser owns the box, the server owns the record: an entry is numbered here when Enter is pressed,
// kept in this browser until the server says it is saved, and sent again as often as it takes. The number makes sending twice harmless.
const sleep = ms => new Promise(done => setTimeout(done, ms));

const heldHere = 'What you type is held in this browser and saved when it can be.';

// No answer, or one that may be another in a moment: the same reading is sent again, later and later.
const passes = reply => reply === null || reply.status >= 500 || reply.status === 429 || reply.status === 408;

// Refused because of who sends it, not because of what is sent.
const barred = reply => reply.status === 403 || reply.body?.code === 'form-token';

function hint(key) {
  const kbd = document.createElement('kbd');
  kbd.setAttribute('aria-hidden', 'true');
  kbd.textContent = key;
  return kbd;
}

function heldButton(what, words, held) {
  const button = document.createElement('button');
  button.type = 'button';
  button.className = 'button';
  button.dataset.press = what;
  button.dataset.held = held;
  button.textContent = words;
  return button;
}

// A finger moves so far on a key and still means it, CSS px.
const slides = 6;

// A key that bounces and a second tap answer nothing, ms.
const bounces = 350;

class SweepEntry extends HTMLElement {
  connectedCallback() {
    this.sweep = this.dataset.sweep;
    this.box = this.querySelector('[data-box]');
    this.standing = JSON.parse(this.dataset.standing);
    this.ranges = JSON.parse(this.dataset.ranges);
    this.typedKey = `portwright.typed.${this.sweep}`;
    this.liftKey = `portwright.lift.${this.sweep}`;
    this.pendingPrefix = `portwright.pending.${this.sweep}.`;
    this.refusedPrefix = `portwright.refused.${this.sweep}.`;
    this.questionPrefix = `portwright.question.${this.sweep}.`;
    this.nameKey = `portwright.name.${this.sweep}`;
    this.count = 0;
    this.busy = false;
    this.chosen = localStorage.getItem(this.liftKey);
    if (this.chosen && !this.step(this.chosen)) this.choose(null);
    this.box.value = localStorage.getItem(this.typedKey) ?? '';
    this.before = this.box.value;
    this.box.addEventListener('input', () => { this.keepTyped(); this.show(); });
    this.box.addEventListener('keydown', event => this.key(event));
    this.addEventListener('click', event => this.press(event));
    this.addEventListener('change', () => this.show());
    this.keypad = document.querySelector('[data-keypad]');
    this.padFingers();
    document.querySelector('main .day')?.addEventListener('click', event => this.press(event));
    document.addEventListener('click', event => {
      const jump = event.target.closest('[data-jump]');
      if (jump) { this.choose(jump.dataset.jump); this.show(); this.box.focus(); }
    });
    document.addEventListener('sweep-standing', event => { if (this.newer(event.detail)) this.show(); });
    document.addEventListener('line-lost', event => { event.preventDefault(); this.lost = true; this.redraw(); });
    document.addEventListener('visibilitychange', () => {
      if (this.lost && document.hidden && this.box.value === '') location.reload();
    });
    const narrow = matchMedia('(max-width: 620px)');
    const pad = () => { this.box.inputMode = narrow.matches ? 'none' : 'decimal'; };
    narrow.addEventListener('change', pad);
    pad();
    this.show();
    this.box.focus({ preventScroll: true });
    this.send();
  }

  // ---- what is asked
  step(key) { return this.standing.steps.find(s => s.key === key); }
  // What was held before passes had names stands by its lift alone.
  stepOf(entry) { return entry.step ?? entry.lift; }
  at(entry) { return this.step(this.stepOf(entry))?.shown ?? entry.lift; }
  pending() { return this.held(this.pendingPrefix); }
  refusals() { return this.held(this.refusedPrefix); }
  questions() { return this.held(this.questionPrefix); }
  // The question that stands at the box: its number waits there, outside the record, until it is answered.
  question() { return this.box.value === '' ? this.questions()[0] ?? null : null; }
  held(prefix) {
    const found = [];
    for (let i = 0; i < localStorage.length; i++) {
      const name = localStorage.key(i);
      if (!name.startsWith(prefix)) continue;
      try { found.push({ name, entry: JSON.parse(localStorage.getItem(name)) }); } catch { localStorage.removeItem(name); }
    }
    return found.sort((a, b) => (a.name < b.name ? -1 : 1));
  }
  next() {
    if (this.chosen && this.step(this.chosen)) return this.step(this.chosen);
    const open = this.question() ?? this.questionAt(this.mends);
    if (open && this.step(this.stepOf(open.entry))) return this.step(this.stepOf(open.entry));
    const waiting = new Set([...this.pending(), ...this.questions()].map(p => this.stepOf(p.entry)));
    return this.standing.steps.find(s => s.read === 0 && !waiting.has(s.key)) ?? null;
  }
  choose(key) {
    this.chosen = key;
    if (key) localStorage.setItem(this.liftKey, key); else localStorage.removeItem(this.liftKey);
  }
  keepTyped() {
    // The first character typed while a question stands begins that reading anew.
    if (this.box.value === '') this.mends = null; else if (this.before === '') this.mends = this.questions()[0]?.name ?? null;
    this.before = this.box.value;
    if (this.box.value) localStorage.setItem(this.typedKey, this.box.value); else localStorage.removeItem(this.typedKey);
  }
  range() { return this.querySelector('[data-range]')?.value ?? this.ranges[0].name; }

  newer(standing) {
    // An older standing may come late, by the other line: it must not ask for a lift that is read.
    if (standing.version < this.standing.version) return false;
    this.standing = standing;
    return true;
  }

  // ---- keys and fingers
  key(event) {
    if (event.isComposing) return;
    // No key that can stand in a number, a fraction or a unit is a command.
    if (event.key === 'Enter') { event.preventDefault(); this.save(event.shiftKey); }
    else if (event.key === '*') { event.preventDefault(); this.save(true); }
    else if (event.key === 'z' && (event.ctrlKey || event.metaKey) && this.box.value === '') { event.preventDefault(); this.takeBack(); }
    else if (event.key.toLowerCase() === 'k' && !event.ctrlKey && !event.metaKey && !event.altKey && this.question()?.entry.question.mayKeep) { event.preventDefault(); this.answer(this.question(), null); }
  }
  // A finger that slides a little is a tap, even over a key's edge; the browser's own click would then go to no key at all.
  padFingers() {
    let down = null;
    this.keypad.addEventListener('pointerdown', event => {
      const key = event.target.closest('[data-press]');
      down = key ? { key, finger: event.pointerId, x: event.clientX, y: event.clientY } : null;
    });
    document.addEventListener('pointercancel', () => { down = null; });
    document.addEventListener('pointerup', event => {
      if (down?.finger !== event.pointerId) return;
      const { key, x, y } = down;
      down = null;
      const same = document.elementFromPoint(event.clientX, event.clientY)?.closest('[data-press]') === key;
      if (!key.disabled && (same || Math.hypot(event.clientX - x, event.clientY - y) <= slides)) this.pressed(key);
    });
    // By a keyboard, or by what reads the page aloud: no finger came before.
    this.keypad.addEventListener('click', event => { if (event.detail === 0) this.press(event); });
  }
  press(event) {
    const button = event.target.closest('[data-press]');
    if (button) this.pressed(button);
  }
  pressed(button) {
    const what = button.dataset.press;
    if (what === 'save') this.save(false);
    else if (what === 'again') this.save(true);
    else if (what === 'back') this.takeBack();
    else if (what === 'put-back') this.turn('put-back', this.standing.takenBack?.id);
    else if (what === 'likely') this.answer(this.questionAt(button.dataset.held), button.dataset.text);
    else if (what === 'keep') this.answer(this.questionAt(button.dataset.held), null);
    else if (what === 'retype') this.retype(this.questionAt(button.dataset.held));
    else if (what === 'mend') this.mend(button.dataset.held);
    else if (what === 'drop') { localStorage.removeItem(button.dataset.held); this.forgetName(); this.show(); }
    else {
      // A text that stands marked is typed over or rubbed out, by the pad as by the keyboard.
      const [from, to] = [this.box.selectionStart, this.box.selectionEnd];
      const character = what === 'rub' ? '' : what;
      if (from !== to) this.box.setRangeText(character, from, to, 'end');
      else this.box.value = what === 'rub' ? this.box.value.slice(0, -1) : this.box.value + character;
      this.keepTyped();
      this.show();
    }
    this.box.focus({ preventScroll: true });
  }
  settled() { return performance.now() - (this.savedAt ?? -bounces) >= bounces; }
  query(selector) { return this.querySelector(selector) ?? document.querySelector(selector); }

  // ---- saving
  save(again) {
    const text = this.box.value.trim();
    const at = this.next();
    if (text === '') {
      // Nothing typed: Enter takes what is likely in a question that was there to be read; * asks the lift read last once more.
      const last = this.lastKey ?? this.standing.last?.step;
      const open = this.question();
      if (open) {
        if (!this.settled()) return;
        if (open.entry.question.likely.length > 0) this.answer(open, open.entry.question.likely[0]);
        else this.say(`Keep ${open.entry.text} with K, or type the number again.`);
      } else if (again && last) { this.choose(last); this.show(); }
      return;
    }
    // What is typed while a question stands is that reading, typed again.
    const mended = this.questionAt(this.mends);
    if (!at) { this.say('Every lift is read. Touch the lift this number belongs to, then save it.'); return; }
    const now = new Date();
    const entry = {
      number: crypto.randomUUID(), step: at.key, lift: at.lift, pass: at.pass, text, at: local(now), range: this.range(),
      pressure: at.pressure ?? this.querySelector('[data-pressure]')?.value ?? '',
      meterTemperature: this.querySelector('[data-meter-temperature]')?.value ?? '',
      plenumTemperature: this.querySelector('[data-plenum-temperature]')?.value ?? '',
      sound: this.querySelector('[data-sound]:checked')?.value ?? '', hand: this.dataset.hand,
    };
    const order = `${now.getTime()}`.padStart(15, '0') + `${this.count++}`.padStart(6, '0');
    localStorage.setItem(this.pendingPrefix + order, JSON.stringify(entry));
    // Any page of the workbench says what still waits here, and by this name.
    localStorage.setItem(this.nameKey, this.dataset.name);
    if (mended) localStorage.removeItem(mended.name);
    this.mends = null;
    this.lastKey = entry.step;
    this.savedAt = performance.now();
    this.box.value = '';
    this.keepTyped();
    for (const sound of this.querySelectorAll('[data-sound]')) sound.checked = false;
    this.choose(again ? entry.step : null);
    this.say('');
    this.show();
    this.send();
  }

  async send() {
    if (this.busy) return;
    this.busy = true;
    let patience = 250;
    for (let waiting = this.pending(); waiting.length > 0; waiting = this.pending()) {
      const { name, entry } = waiting[0];
      const reply = await this.post('reading', entry);
      if (passes(reply)) {
        this.line(`${reply?.body?.problem ?? 'The workbench does not answer.'} ${heldHere}`);
        await sleep(patience);
        patience = Math.min(patience * 1.5, reply === null ? 2000 : 15000);
        continue;
      }
      patience = 250;
      if (barred(reply)) {
        // Nothing is wrong with the reading: it stays held, and the next one saved tries again.
        this.line(reply.status === 403
          ? `The workbench takes nothing from this page, because it was not opened at the workbench's own address. Open it again from the address in the terminal. ${heldHere}`
          : `The workbench does not know this page any more, and a fresh form did not help. Let this browser keep cookies for ${location.hostname}, then load the page again. ${heldHere}`);
        break;
      }
      this.line(null);
      const asked = this.next();
      localStorage.removeItem(name);
      if (reply.status === 200) {
        this.newer(reply.body.standing);
        this.means(this.stepOf(entry));
      } else if (reply.status === 409 && reply.body?.question) {
        this.ask(name, entry, reply.body.question);
      } else {
        this.refused(name, entry, reply.body?.problem ?? `The workbench does not take this reading (${reply.status}).`, asked);
      }
      this.forgetName();
      this.show();
    }
    this.busy = false;
    if (this.lost) this.redraw();
  }
  forgetName() {
    if (this.pending().length + this.refusals().length + this.questions().length === 0) localStorage.removeItem(this.nameKey);
  }

  // Without the live line the picture is fetched, one at a time: what was asked for before a reading was saved must not come to stand
  // over what was asked for after it.
  async redraw() {
    this.stale = true;
    if (this.drawing) return;
    this.drawing = true;
    while (this.stale) {
      this.stale = false;
      const fresh = await this.page();
      if (fresh) this.draw(fresh);
      else { this.stale = true; await sleep(1000); }
    }
    this.drawing = false;
  }
  async page() {
    try {
      const answer = await fetch(location.href, { cache: 'no-store' });
      return answer.status < 500 ? new DOMParser().parseFromString(await answer.text(), 'text/html') : null;
    } catch { return null; }
  }
  draw(fresh) {
    for (const part of ['.picture', '.day .strip']) {
      const now = document.querySelector(part);
      const then = fresh.querySelector(part);
      if (now && then) now.replaceChildren(...then.childNodes);
    }
    this.show();
  }

  // Sends it; where only the form's token is too old, once more with a fresh one.
  async post(what, body) {
    const reply = await this.postOnce(what, body);
    if (reply?.body?.code !== 'form-token') return reply;
    try {
      const fresh = await fetch('/form-token', { credentials: 'same-origin', cache: 'no-store' });
      if (!fresh.ok) return fresh.status >= 500 ? null : reply;
      this.dataset.token = (await fresh.json()).token;
    } catch { return null; }
    return this.postOnce(what, body);
  }
  async postOnce(what, body) {
    try {
      const response = await fetch(`/sweep/${this.sweep}/${what}`, {
        method: 'POST', credentials: 'same-origin', cache: 'no-store',
        headers: { 'Content-Type': 'application/json', 'X-Form-Token': this.dataset.token }, body: JSON.stringify(body),
      });
      let answer = null;
      try { answer = await response.json(); } catch { if (response.ok) return null; }
      return { status: response.status, body: answer };
    } catch { return null; }
  }

  refused(name, entry, problem, asked) {
    // Asked again now, unless something else is being typed already: that keeps its lift, and the refused one is listed.
    if (this.box.value === '') {
      this.say(`At ${this.at(entry)}: ${problem}`);
      this.box.value = entry.text;
      this.keepTyped();
      this.choose(this.stepOf(entry));
      this.box.select();
      return;
    }
    localStorage.setItem(this.refusedPrefix + name.slice(this.pendingPrefix.length), JSON.stringify({ ...entry, problem }));
    if (asked) this.choose(asked.key);
  }
  mend(held) {
    const refusal = this.refusals().find(r => r.name === held);
    if (!refusal) return;
    if (this.box.value !== '') { this.say('Save the number in the box first, then type the refused one again.'); return; }
    localStorage.removeItem(held);
    this.forgetName();
    this.box.value = refusal.entry.text;
    this.keepTyped();
    this.choose(this.step(this.stepOf(refusal.entry)) ? this.stepOf(refusal.entry) : null);
    this.say(`At ${this.at(refusal.entry)}: ${refusal.entry.problem}`);
    this.show();
    this.box.select();
  }

  async turn(what, id) {
    if (!id) return;
    const reply = await this.post(what, { id });
    if (reply?.status === 200) {
      this.newer(reply.body.standing);
      this.means(null);
      this.show();
      if (this.lost) this.redraw();
    }
    else if (passes(reply)) this.say('That was not done: the workbench does not answer. Do it again in a moment.');
    else if (barred(reply)) this.say('That was not done: the workbench does not know this page any more. Load the page again, then do it again.');
    else this.say(`That was not done. ${reply.body?.problem ?? `The workbench does not take it (${reply.status}).`}`);
  }
  takeBack() {
    if (this.pending().length > 0) { this.say('Wait until the readings held here are saved, then take back.'); return; }
    return this.turn('take-back', this.standing.last?.id);
  }
  questionAt(name) { return this.questions().find(q => q.name === name) ?? null; }
  // By what was likely meant, or kept as it was typed.
  answer(asked, text) {
    if (!asked) return;
    const { question, ...entry } = asked.entry;
    localStorage.removeItem(asked.name);
    // A new number: what was asked about was never saved. A test pressure kept does not keep the reading with it.
    const kept = text !== null ? {} : question.about === 'pressure' ? { pressureKept: true } : { kept: true };
    const answered = { ...entry, number: crypto.randomUUID(), text: text ?? entry.text, ...kept };
    localStorage.setItem(this.pendingPrefix + asked.name.slice(this.questionPrefix.length), JSON.stringify(answered));
    this.lastKey = this.stepOf(entry);
    this.say('');
    this.show();
    this.send();
  }
  retype(asked) {
    if (!asked) return;
    localStorage.removeItem(asked.name);
    this.forgetName();
    this.choose(this.stepOf(asked.entry));
    this.show();
  }

  // ---- showing
  show() {
    const at = this.next();
    const asked = this.query('[data-asked]');
    const words = this.query('[data-asked-lift]');
    asked.classList.toggle('done', !at);
    const text = at ? at.shown : 'Every lift is read.';
    const pass = this.query('[data-pass]');
    pass.textContent = at?.passWords ?? '';
    pass.hidden = !at?.passWords || !!at?.pressure;
    const pressure = this.query('[data-step-pressure]');
    pressure.hidden = !at?.pressure;
    if (at?.pressure) pressure.querySelector('[data-words]').textContent = `again, at ${at.pressureShown}`;
    if (words.textContent !== text) words.textContent = text;
    this.query('[data-lift-unit]').hidden = !at;
    this.query('[data-label]').textContent = at ? (at.read > 0 ? `Once more at` : at.closing ? 'Close the valve to' : 'Open the valve to') : 'The plan is done';
    const range = this.ranges.find(r => r.name === this.range()) ?? this.ranges[0];
    this.query('[data-unit]').textContent = range.shown;
    const waiting = this.pending();
    const read = this.standing.steps.filter(s => s.read > 0).length;
    for (const place of document.querySelectorAll('[data-progress]')) place.textContent = `${read} of ${this.standing.steps.length}`;
    const list = this.query('[data-pending]');
    list.replaceChildren(...waiting.slice(0, 8).map(({ entry }) => {
      const item = document.createElement('li');
      item.textContent = `${this.at(entry)}: ${entry.text}, not saved yet`;
      return item;
    }));
    this.query('[data-refused]').replaceChildren(...this.refusals().map(({ name, entry }) => {
      const item = document.createElement('li');
      const words = document.createElement('span');
      words.textContent = `${this.at(entry)}: ${entry.text}, not taken. ${entry.problem}`;
      item.append(words, heldButton('mend', 'Type it again', name), heldButton('drop', 'Leave it out', name));
      return item;
    }));
    const last = this.standing.last;
    for (const button of document.querySelectorAll('[data-press="back"]')) {
      // A key that goes would move the others under the finger.
      if (button.closest('[data-keypad]')) button.disabled = !last; else button.hidden = !last;
      const shown = button.querySelector('[data-back-lift]');
      if (shown && last) shown.textContent = last.lift;
    }
    const put = this.query('[data-press="put-back"]');
    put.hidden = !this.standing.takenBack;
    if (this.standing.takenBack) put.querySelector('[data-put-lift]').textContent = this.standing.takenBack.lift;
    for (const jump of document.querySelectorAll('[data-jump]')) {
      const here = jump.dataset.jump === at?.key;
      jump.classList.toggle('asked', here);
      if (here) jump.setAttribute('aria-current', 'step'); else jump.removeAttribute('aria-current');
    }
    this.query('[data-finish]').hidden = !!at;
    this.showQuestions();
  }
  means(key) {
    const step = key ? this.step(key) : null;
    const place = this.query('[data-means]');
    place.hidden = !step?.flow;
    if (!step?.flow) return;
    this.query('[data-flow]').textContent = step.flow;
    this.query('[data-doubt]').textContent = ` ${step.doubt}`;
    this.query('[data-at]').textContent = `at ${step.shown}${step.atLift > 1 ? `, ${step.atLift} readings` : ''}`;
    this.query('[data-verdict]').textContent = step.verdict ?? '';
    for (const shape of this.querySelectorAll('[data-shape]')) shape.hidden = shape.dataset.shape !== step.shape;
    place.classList.remove('just-read');
    void place.offsetWidth;
    place.classList.add('just-read');
  }
  ask(name, entry, question) {
    localStorage.setItem(this.questionPrefix + name.slice(this.pendingPrefix.length), JSON.stringify({ ...entry, question }));
    localStorage.setItem(this.nameKey, this.dataset.name);
  }
  showQuestions() {
    const open = this.question();
    const place = this.query('[data-question]');
    place.hidden = !open;
    const keys = this.query('[data-question-keys]');
    if (!open) { keys.replaceChildren(); return; }
    this.query('[data-question-words]').textContent = `At ${this.at(open.entry)}: ${open.entry.question.words}`;
    keys.replaceChildren(...open.entry.question.likely.map((text, i) => {
      const button = heldButton('likely', text, open.name);
      button.dataset.text = text;
      if (i === 0) { button.classList.add('main'); button.append(' ', hint('\u21b5')); }
      return button;
    }));
    if (open.entry.question.mayKeep) {
      const keep = heldButton('keep', `Keep ${open.entry.text}`, open.name);
      keep.append(' ', hint('K'));
      keys.append(keep);
    }
    keys.append(heldButton('retype', 'Type it again', open.name));
  }
  say(words) { const place = this.query('[data-problem]'); place.hidden = !words; place.querySelector('[data-words]').textContent = words; }
  line(words) {
    const place = this.query('[data-line]');
    place.hidden = !words;
    if (words) place.textContent = words;
  }
}

// Local time with its offset, as the record keeps it.
function local(date) {
  const two = n => String(Math.abs(n)).padStart(2, '0');
  const minutes = -date.getTimezoneOffset();
  const stamp = new Date(date.getTime() + minutes * 60000).toISOString().slice(0, -1);
  return `${stamp}${minutes < 0 ? '-' : '+'}${two(Math.trunc(minutes / 60))}:${two(minutes % 60)}`;
}

// The live part of the page passes on how the sweep stands, whoever changed it.
class SweepStanding extends HTMLElement {
  static observedAttributes = ['data-standing'];
  // Drawn anew by the live line, the steps know nothing yet of which is asked for.
  connectedCallback() { setTimeout(() => document.dispatchEvent(new CustomEvent('sweep-standing', { detail: JSON.parse(this.dataset.standing) }))); }
  attributeChangedCallback(name, before, now) {
    if (before && now) document.dispatchEvent(new CustomEvent('sweep-standing', { detail: JSON.parse(now) }));
  }
}

customElements.define('sweep-standing', SweepStanding);
customElements.define('sweep-entry', SweepEntry);
