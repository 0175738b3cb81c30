// Starts the page: waits for the first paint, loads the program, tells of trouble, and
// keeps the page's files for use without a network. The build puts the files' names in.
//
// What it tells the program, on the document's root; of the last two the window hears by
// an event as well, and the root is for whoever comes late:
//
//   data-worker="ADDRESS"              the worker's script, for `new Worker(…, { type: 'module' })`
//   data-style-in-use="ADDRESS"        the styles of what comes when the page is first used
//   data-app="loading|ready|trouble"   how the program stands
//   data-offline="kept"                `tinwave-offline`: everything is kept now; once a device.
//                                      'Works without a network from now on', for 6 s
//   data-update="ready"                `tinwave-update`: a newer page is ready.
//                                      'A newer page is ready': Take it, Later
//
// What it hears from the program:
//
//   tinwave-take-update                take the newer page now; the page opens anew at the same
//                                      address, so what is to be kept must be kept already

const SCRIPT = './{{app}}';
const PROGRAM = './{{wasm}}';
const WORKER = './{{worker}}';
const STYLE_IN_USE = './{{style_in_use}}';
const VERSION = '{{version}}';

const KEPT_KEY = 'tinwave'; // written by the program, one line for each thing
const TOLD_KEY = 'tinwave.offline-told';
const HOUR_MS = 3_600_000;

const root = document.documentElement;
const element = (id) => document.getElementById(id);

function remembered(key) {
  try {
    return localStorage.getItem(key) ?? '';
  } catch {
    return ''; // Storage is shut.
  }
}

function tell(key, value, name) {
  root.dataset[key] = value;
  dispatchEvent(new CustomEvent(name));
}

// ---- Before the program: the colours that were chosen, no example in a design's place ----

const kept = remembered(KEPT_KEY);
const theme = /^theme (light|dark)$/m.exec(kept)?.[1];
if (theme) root.dataset.theme = theme;
const opensOwn = location.hash.length > 1 || /^link /m.test(kept);
if (opensOwn) root.dataset.opening = 'own';
root.dataset.worker = new URL(WORKER, import.meta.url).href;
root.dataset.styleInUse = new URL(STYLE_IN_USE, import.meta.url).href;

function uncover() {
  delete root.dataset.opening;
  element('app').inert = false;
}

// ---- Trouble: one story for a program that did not come or did not last ----

const keepLink = () => {
  element('trouble-link').value = location.href;
};

function trouble(story) {
  if (root.dataset.app === 'trouble') return;
  root.dataset.app = 'trouble';
  uncover();
  keepLink();
  for (const one of ['load', 'stop']) element(`trouble-${one}`).hidden = one !== story;
  const notice = element('trouble');
  notice.hidden = false;
  notice.scrollIntoView();
}

element('trouble-reload').addEventListener('click', () => location.reload());
addEventListener('hashchange', keepLink);
// A program that finds itself at fault traps, and the browser tells of it: in an event's
// turn as an error, in a promise's as a refusal that nobody took.
const isTrap = (reason) => reason instanceof WebAssembly.RuntimeError;
const stoppedBy = (reason) => isTrap(reason) && trouble('stop');
addEventListener('error', ({ error }) => stoppedBy(error));
addEventListener('unhandledrejection', ({ reason }) => stoppedBy(reason));

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
  // What is typed into the example's fields would be lost when the program takes over.
  element('app').inert = true;
  await firstPaint();
  try {
    const [program, response] = await Promise.all([import(SCRIPT), fetch(new URL(PROGRAM, import.meta.url))]);
    await program.default({ module_or_path: response });
    if (root.dataset.app === 'loading') root.dataset.app = 'ready';
    uncover();
  } catch (error) {
    console.error(error);
    trouble(isTrap(error) ? 'stop' : 'load');
  }
}

// ---- Without a network, and new versions ----

function tellOfflineOnce() {
  try {
    if (localStorage.getItem(TOLD_KEY)) return;
    localStorage.setItem(TOLD_KEY, VERSION);
  } catch {
    return; // Storage is shut: better silent than told at every visit.
  }
  tell('offline', 'kept', 'tinwave-offline');
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
  // On a first visit there is none yet. (`controller` would not do: a forced reload has
  // none though a version is kept.)
  let hasWorker = Boolean(registration.active);
  let accepted = false;

  const offer = () => tell('update', 'ready', 'tinwave-update');
  const arrived = (worker) => whenInstalled(worker, () => hasWorker && offer());
  workers.addEventListener('message', ({ data }) => data === 'all kept' && tellOfflineOnce());
  workers.ready.then(({ active }) => active.postMessage('keep the rest'));

  if (registration.waiting && hasWorker) offer();
  if (registration.installing) arrived(registration.installing);
  registration.addEventListener('updatefound', () => {
    if (registration.installing) arrived(registration.installing);
  });

  addEventListener('tinwave-take-update', () => {
    accepted = true;
    const waiting = registration.waiting;
    if (waiting) waiting.postMessage('take over');
    else location.reload(); // Another window took it already.
  });

  workers.addEventListener('controllerchange', () => {
    if (accepted) location.reload(); // Same address, so the design is kept.
    else if (hasWorker) offer(); // Taken in another window: this one is the old page.
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
  if (!('serviceWorker' in navigator)) return;
  try {
    const registration = await navigator.serviceWorker.register('./sw.js', { updateViaCache: 'none' });
    watchVersions(registration);
  } catch (error) {
    // Some browsers refuse in private windows; the page works all the same.
    console.info('Not kept for use without a network:', error);
  }
}

// The service worker fetches what the program fetches; after it, most comes from the
// browser's own cache and nothing competes with the start.
startProgram().then(keepForOffline);
