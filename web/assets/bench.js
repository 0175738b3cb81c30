// The parts of the page that are fetched when they are wanted. The workbench (see
// worker.js) answers what each place shows; this puts it there, and hands on what
// the maker does.

const root = document.documentElement;

const style = document.createElement('link');
style.rel = 'stylesheet';
style.href = new URL('./{{bench_style}}', import.meta.url).href;
document.head.append(style);

const waiting = new Map();
let count = 0;
let worker = null;

function hire() {
  const hired = new Worker(new URL('./{{worker}}', import.meta.url), { type: 'module' });
  hired.onmessage = ({ data }) => {
    const hear = waiting.get(data.id);
    if (!hear) return;
    if (data.ended || data.total === undefined) waiting.delete(data.id);
    hear(data);
  };
  // It could not be fetched, or broke: whoever waits is told, and the next question
  // finds another.
  hired.onerror = () => {
    hired.terminate();
    worker = null;
    const left = [...waiting.values()];
    waiting.clear();
    for (const hear of left) hear({ failed: true });
  };
  return hired;
}

/** Asks the workbench; hears `failed` where it can't answer. */
function send(message, hear) {
  worker ??= hire();
  waiting.set(++count, hear);
  worker.postMessage({ id: count, ...message });
  return count;
}

const memory = {
  read(key) {
    try {
      return localStorage.getItem(key) ?? '';
    } catch {
      return ''; // Storage is shut: nothing is kept.
    }
  },
  write(key, text) {
    try {
      localStorage.setItem(key, text);
    } catch {
      // Shut or full: the entries live as long as the page.
    }
  },
};

function saveFile(whole) {
  const end = whole.indexOf('\n');
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([whole.slice(end + 1)], { type: 'text/plain' }));
  link.download = whole.slice(0, end);
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 20_000);
}

/** Something for the page's own program. */
const tell = (name, detail) => dispatchEvent(new CustomEvent(name, { detail }));

class Part {
  constructor(section) {
    this.section = section;
    this.name = section.dataset.bench;
    this.key = `tinwave-${this.name}`;
    this.body = section.querySelector('.part-body');
    this.asked = false;
    this.again = null;
    this.job = 0;
  }

  async open() {
    const { text, failed } = await new Promise((done) => send({ markup: this.name }, done));
    if (failed) return this.fail();
    const form = document.createElement('form');
    form.innerHTML = text;
    this.body.replaceChildren(form);
    this.form = form;
    this.restore();
    this.offerKept();
    form.addEventListener('submit', (event) => event.preventDefault());
    form.addEventListener('input', () => this.changed());
    form.addEventListener('change', (event) => this.chosen(event));
    form.addEventListener('click', (event) => this.pressed(event.target));
    form.addEventListener('keydown', (event) => this.keyPressed(event));
    this.catchFiles();
    this.ask();
  }

  /** The workbench is not there; folding and unfolding asks again. */
  fail() {
    parts.delete(this.section);
    const note = document.createElement('p');
    note.className = 'note';
    note.textContent =
      'This part could not be fetched or has stopped. Fold and unfold it to try again; what you entered is kept.';
    this.body.replaceChildren(note);
  }

  /** Lists the designs that are kept on the device; choosing one enters its link. */
  offerKept() {
    for (const list of this.form.querySelectorAll('[data-kept]')) {
      const field = this.form.elements[list.dataset.kept];
      const fill = () => {
        const lines = memory.read('tinwave').split('\n').map((line) => line.split(' '));
        const kept = lines.filter(([what]) => what === 'saved');
        const options = kept.map(([, link, ...name]) => new Option(name.join(' '), link));
        list.replaceChildren(list.options[0], ...options);
        list.value = field.value;
        if (list.selectedIndex < 0) list.value = '';
      };
      fill();
      list.addEventListener('focus', fill);
      list.addEventListener('change', () => {
        if (list.value) field.value = list.value;
      });
    }
  }

  /** The entries of the visit before. */
  restore() {
    const kept = new URLSearchParams(memory.read(this.key));
    for (const field of this.form.elements) {
      if (!field.name) continue;
      const values = kept.getAll(field.name);
      if (field.type === 'checkbox' || field.type === 'radio') {
        if (kept.size > 0) field.checked = values.includes(field.value);
      } else if (values.length > 0 && field.type !== 'file') {
        field.value = values[0];
      }
    }
  }

  entries() {
    const entries = new URLSearchParams();
    for (const [name, value] of new FormData(this.form)) {
      if (typeof value === 'string') entries.append(name, value);
    }
    return entries;
  }

  request(extra) {
    const entries = this.entries();
    const { open } = this.section.querySelector('details');
    const whole = { part: this.name, design: root.dataset.design ?? '', unit: root.dataset.unit, open: open ? '1' : '', ...extra };
    for (const [name, value] of Object.entries(whole)) entries.append(name, value);
    return entries.toString();
  }

  changed() {
    this.ask();
    memory.write(this.key, this.entries().toString());
  }

  chosen(event) {
    const [file] = event.target.files ?? [];
    if (file) this.take(file, event.target.dataset.into);
    else this.changed();
  }

  /** A file's text goes into a field, and is then what the part asks about. */
  async take(file, into) {
    // Far more than a measurement is never one.
    const text = file.size > 4e6 ? '' : await file.text();
    const named = this.form.elements[`${into}-name`];
    if (named) named.value = file.name;
    this.form.elements[into].value = text;
    for (const field of this.form.querySelectorAll('input[type=file]')) field.value = '';
    this.ask({ act: `file ${into}` });
    this.changed();
  }

  catchFiles() {
    const places = this.form.querySelectorAll('[data-drop]');
    for (const place of places) {
      place.addEventListener('dragover', (event) => {
        event.preventDefault();
        place.classList.add('over');
      });
      place.addEventListener('dragleave', () => place.classList.remove('over'));
      place.addEventListener('drop', (event) => {
        event.preventDefault();
        place.classList.remove('over');
        const [file] = event.dataTransfer.files;
        if (file) this.take(file, place.dataset.drop);
      });
    }
  }

  pressed(target) {
    const act = target.closest('[data-act]')?.dataset.act;
    if (act) this.ask({ act });
  }

  keyPressed(event) {
    if (event.key !== 'Enter' && event.key !== ' ') return;
    if (!event.target.matches('[role=button][data-act]')) return;
    event.preventDefault();
    this.pressed(event.target);
  }

  /** Asks; while an answer is on its way only the newest question waits. */
  ask(extra = {}) {
    if (this.asked) {
      // What was pressed is not forgotten for what was typed after it.
      this.again = { ...this.again, ...extra };
      return;
    }
    this.asked = true;
    send({ ask: this.request(extra) }, ({ text, failed }) => {
      this.asked = false;
      if (failed) return this.fail();
      this.show(text);
      const again = this.again;
      this.again = null;
      if (again) this.ask(again);
    });
  }

  show(text) {
    let kept = false;
    for (const [name, value] of new URLSearchParams(text)) {
      const [sign, rest] = [name[0], name.slice(1)];
      if (sign === '#') this.place(rest, value);
      else if (sign === '?') this.hide(rest, !value);
      else if (sign === '~') this.wrong(rest, value);
      else if (sign === '=') {
        const field = this.form.elements[rest];
        if (field && field.value !== value) field.value = value;
        kept = true;
      } else if (rest === 'take') tell('tinwave-take', value);
      else if (rest === 'measured') tell('tinwave-measured', value);
      else if (rest === 'save') saveFile(value);
      else if (rest === 'begin') this.begin(value);
      else if (rest === 'stop') this.stop();
    }
    if (kept) memory.write(this.key, this.entries().toString());
  }

  place(name, markup) {
    const place = this.section.querySelector(`[data-place="${name}"]`);
    if (!place || place.shown === markup) return;
    const held = place.contains(document.activeElement) && document.activeElement.dataset.act;
    place.shown = markup;
    place.innerHTML = markup;
    // The button that was pressed keeps the focus.
    if (held) place.querySelector(`[data-act="${CSS.escape(held)}"]`)?.focus();
  }

  hide(name, hidden) {
    const place = this.section.querySelector(`[data-place="${name}"]`);
    if (!place) return;
    const held = hidden && place.contains(document.activeElement);
    place.hidden = hidden;
    // Who pressed what is gone now goes on from the part's head.
    if (held) this.section.querySelector('summary').focus({ preventScroll: true });
  }

  wrong(name, sentence) {
    const field = this.form.elements[name];
    if (!field) return;
    field.setAttribute('aria-invalid', sentence ? 'true' : 'false');
    field.closest('.field')?.classList.toggle('wrong', sentence !== '');
    const message = field.closest('.field')?.querySelector('.message');
    if (message && message.textContent !== sentence) message.textContent = sentence;
  }

  begin(name) {
    waiting.delete(this.job);
    this.busy(0, 1);
    this.job = send({ begin: this.request({ job: name }), part: this.name }, ({ done, total, text, ended, failed }) => {
      if (failed) return this.fail();
      this.show(text);
      if (ended) this.busy(0, 0);
      else this.busy(done, total);
    });
  }

  stop() {
    waiting.delete(this.job);
    worker?.postMessage({ stop: this.name });
    this.busy(0, 0);
  }

  busy(done, total) {
    for (const place of this.section.querySelectorAll('[data-busy]')) {
      place.hidden = total === 0;
      const bar = place.querySelector('progress');
      if (bar) Object.assign(bar, { max: Math.max(total, 1), value: done });
    }
  }
}

/** An answer to a question that no part asks: its pairs by name. */
export async function answered(part, entries) {
  const request = new URLSearchParams({
    part,
    design: root.dataset.design ?? '',
    unit: root.dataset.unit,
    ...entries,
  });
  const { text, failed } = await new Promise((done) => send({ ask: request.toString() }, done));
  if (failed) throw new Error('the workbench could not be fetched');
  return new URLSearchParams(text);
}

const parts = new Map();

/** Fetches a part for its section, once; after that it only answers anew. */
export function open(section) {
  const known = parts.get(section);
  if (known) {
    if (known.form) known.ask();
    return;
  }
  const part = new Part(section);
  parts.set(section, part);
  part.open();
}

// The design has changed: every part answers anew. (It is also written when only
// what the page knows of it has.)
const standing = () => `${root.dataset.design} ${root.dataset.unit}`;
let stood = standing();
new MutationObserver(() => {
  if (stood === standing()) return;
  stood = standing();
  for (const part of parts.values()) if (part.form) part.ask();
}).observe(root, { attributeFilter: ['data-design', 'data-unit'] });
