// Starts the page: waits for the first paint, loads the program, says so when
// that fails, and keeps the page's files for use without a network.
// The build puts the file names and the version into this text.

const SCRIPT = './{{app}}';
const PROGRAM = './{{wasm}}';
const PRINTER = './{{printer}}';
const WORKER = './{{worker}}';
const PARTS = './{{parts}}';
const VERSION = '{{version}}';

const TOLD_KEY = 'tinwave.offline-told';
const CHOICES_KEY = 'tinwave.print';
const HOUR_MS = 3_600_000;

const LOAD_FAILED =
  'The calculator could not be loaded. Your design is safe in the link below: copy it, then try again.';
const STOPPED =
  'The calculator has stopped because of a fault of its own. Your design is safe in the link below: copy it, then start again.';

const root = document.documentElement;
const element = (id) => document.getElementById(id);

function show(id, shown = true) {
  const found = element(id);
  if (found) found.hidden = !shown;
}

function onClick(id, action) {
  element(id)?.addEventListener('click', action);
}

// ---- Trouble: one notice for a program that did not come or did not last ----

function keepLink() {
  const field = element('trouble-link');
  if (field) field.value = location.href;
}

function trouble(sentence) {
  if (root.dataset.app === 'trouble') return;
  root.dataset.app = 'trouble';
  const text = element('trouble-text');
  if (text) text.textContent = sentence;
  keepLink();
  show('trouble');
}

onClick('trouble-reload', () => location.reload());
addEventListener('hashchange', keepLink);
// A program that finds itself at fault traps, and the browser tells of it: in an
// event's turn as an error, in a promise's as a refusal that nobody took.
const stoppedBy = (reason) => reason instanceof WebAssembly.RuntimeError && trouble(STOPPED);
addEventListener('error', (event) => stoppedBy(event.error));
addEventListener('unhandledrejection', (event) => stoppedBy(event.reason));

// ---- The program ----

const frame = () => new Promise((done) => requestAnimationFrame(done));
// A page in a background tab gets no frames; it must start all the same.
const shortly = () => new Promise((done) => setTimeout(done, 500));

async function firstPaint() {
  if (document.readyState !== 'complete') {
    await new Promise((done) => addEventListener('load', done, { once: true }));
  }
  await Promise.race([frame().then(frame), shortly()]);
}

async function startProgram() {
  root.dataset.app = 'loading';
  await firstPaint();
  try {
    const program = await import(SCRIPT);
    await program.default({ module_or_path: new URL(PROGRAM, import.meta.url) });
    if (root.dataset.app === 'loading') root.dataset.app = 'ready';
  } catch (error) {
    console.error(error);
    trouble(error instanceof WebAssembly.RuntimeError ? STOPPED : LOAD_FAILED);
  }
}

// ---- Parts that are fetched when they are wanted ----

const TOUCHES = ['pointerdown', 'pointermove', 'keydown', 'wheel', 'touchstart', 'focusin', 'input', 'scroll'];

/** At the first touch, the full computation; until then nothing more is fetched. */
function touched() {
  for (const name of TOUCHES) removeEventListener(name, touched, true);
  root.dataset.worker = new URL(WORKER, import.meta.url).href;
  dispatchEvent(new Event('tinwave-touched'));
}

for (const name of TOUCHES) addEventListener(name, touched, { capture: true, passive: true });

const NOT_FETCHED =
  'This part could not be fetched. Once the page is back on the network, fold and unfold it again.';

async function openPart(section) {
  try {
    (await import(PARTS)).open(section);
  } catch (error) {
    console.error(error);
    section.querySelector('.part-body').textContent = NOT_FETCHED;
  }
}

/** The reasons behind a figure. */
async function openWhy(details) {
  const text = details.querySelector('.why-text');
  const of = details.closest('[data-why]')?.dataset.why;
  if (!of || text.childElementCount > 0) return;
  text.textContent = 'Being fetched \u2026';
  try {
    const { answered } = await import(PARTS);
    text.innerHTML = (await answered('whys', { of })).get('#why');
  } catch (error) {
    console.error(error);
    text.textContent = NOT_FETCHED;
  }
}

// Unfolding does not bubble: it is caught on its way down.
document.addEventListener(
  'toggle',
  ({ target }) => {
    if (!target.open) return;
    if (target.matches('.why')) openWhy(target);
    else if (target.parentElement?.dataset.bench) openPart(target.parentElement);
  },
  true,
);

// ---- Printing: fetched when it is asked for ----

addEventListener('tinwave-print', async ({ detail }) => {
  const said = element('print-said');
  const say = (text) => {
    if (said) said.textContent = text;
  };
  say('Drawing the sheets \u2026');
  try {
    const [job, kind] = detail;
    const { answered } = await import(PARTS);
    const chosen = (name) => element(`print-${name}`).value;
    const computed = await answered('fittings', { cap: chosen('cap'), bracket: chosen('bracket') });
    await (await import(PRINTER)).run(job + computed.get('!lines'), kind);
    say('');
  } catch (error) {
    console.error(error);
    say(`That could not be printed: ${error.message}.`);
  }
});

/** Paper and choices for printing, as they were at the last visit. */
function keepPrintChoices(form) {
  const fields = [...form.elements].filter((field) => field.value !== undefined && field.type !== 'fieldset');
  const name = (field) => field.id || field.value;
  const value = (field) => (field.type === 'checkbox' ? field.checked : field.value);
  try {
    const kept = JSON.parse(localStorage.getItem(CHOICES_KEY) ?? '{}');
    for (const field of fields) {
      const was = kept[name(field)];
      if (typeof was === 'boolean') field.checked = was;
      else if (typeof was === 'string') field.value = was;
    }
  } catch {
    // Nothing is kept, or nothing that can be read.
  }
  form.addEventListener('change', () => {
    const now = Object.fromEntries(fields.map((field) => [name(field), value(field)]));
    try {
      localStorage.setItem(CHOICES_KEY, JSON.stringify(now));
    } catch {
      // Storage is shut.
    }
  });
}

// The program puts the form into the page, with all the rest in one go.
new MutationObserver((_, watch) => {
  const form = element('print-form');
  if (!form) return;
  watch.disconnect();
  keepPrintChoices(form);
}).observe(element('app'), { childList: true });

// ---- Without a network, and new versions ----

function tellOnce() {
  try {
    if (localStorage.getItem(TOLD_KEY)) return;
    localStorage.setItem(TOLD_KEY, VERSION);
  } catch {
    return; // Storage is shut: better silent than told at every visit.
  }
  show('offline-note');
}

function whenInstalled(worker, action) {
  const look = () => {
    if (worker.state === 'installed' || worker.state === 'activated') action();
    else if (worker.state !== 'redundant') return false;
    return true;
  };
  if (look()) return;
  const listener = () => {
    if (look()) worker.removeEventListener('statechange', listener);
  };
  worker.addEventListener('statechange', listener);
}

function watchVersions(registration) {
  const workers = navigator.serviceWorker;
  // On a first visit there is none yet. (`controller` would not do: a forced
  // reload has none though a version is kept.)
  let hasWorker = Boolean(registration.active);
  let accepted = false;

  const offer = () => show('update-note');
  const arrived = (worker) => whenInstalled(worker, () => hasWorker && offer());
  workers.addEventListener('message', ({ data }) => data === 'all kept' && tellOnce());
  workers.ready.then(({ active }) => active.postMessage('keep the rest'));

  if (registration.waiting && hasWorker) offer();
  if (registration.installing) arrived(registration.installing);
  registration.addEventListener('updatefound', () => {
    if (registration.installing) arrived(registration.installing);
  });

  onClick('update-take', () => {
    accepted = true;
    const waiting = registration.waiting;
    if (waiting) waiting.postMessage('take over');
    else location.reload(); // Another window took it up already.
  });
  onClick('update-later', () => show('update-note', false));

  workers.addEventListener('controllerchange', () => {
    if (accepted) location.reload(); // Same address, so the design is kept.
    else if (hasWorker) offer(); // Taken up in another window: this one is the old page.
    hasWorker = true;
  });

  // A page that stays open for days should hear of new versions too.
  let asked = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - asked < HOUR_MS) return;
    asked = Date.now();
    registration.update().catch(() => {}); // No network: ask another time.
  });
}

async function keepForOffline() {
  onClick('offline-close', () => show('offline-note', false));
  if (!('serviceWorker' in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register('./sw.js', {
      updateViaCache: 'none',
    });
    watchVersions(registration);
  } catch (error) {
    // Some browsers refuse in private windows; the page works all the same.
    console.info('Not kept for use without a network:', error);
  }
}

// The worker fetches what the program fetches; after it, most comes from the
// browser's own cache and nothing competes with the start.
startProgram().then(keepForOffline);
