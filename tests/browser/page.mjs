// What every scenario uses: a browser, a server that can be stopped, and a
// page whose complaints are written down.
//
//   scenario('name', async (t) => { ... })   one test; everything it opened is closed after it
//   serve(t, { folder, prefix })             a server: .url, .stop(), .restart()
//   copyOf(t, folder), deploy(from, to)      a folder that a test may change; a new version put there
//   open(t, url, options)                    a page in a profile of its own: .problems, and Playwright's own methods
//   ready(page), version(page)               the program has started; which version the page is
//   checkAxe(page), checkQuiet(page)         no accessibility violation; no complaint
//   atStation(page, url, station, can)       a station open for a can
//   settled(page)                            the worker has nothing better to say
//   field(page, label), figure(page, name)   an entry's cell; a headline figure's
//   withoutWorker(t)                         a page whose worker's program can't be fetched, until mended
//
// Run by `cargo test -p tinwave-tests`, which sets the variables read here; one file alone by
// `cargo test -p tinwave-tests --test browser offline`.

import { AxeBuilder } from '@axe-core/playwright';
import assert from 'node:assert/strict';
import { spawn } from 'node:child_process';
import { cp, mkdtemp, readdir, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { after, test } from 'node:test';
import { chromium } from 'playwright-core';

function required(name) {
  const value = process.env[name];
  if (!value) throw new Error(`${name} is not set: run these tests by "cargo test -p tinwave-tests"`);
  return value;
}

/** The built page, and the same page as a newer version. */
export const FIRST = required('TINWAVE_FIRST');
export const SECOND = required('TINWAVE_SECOND');
/** Groups of the page's files, in the order in which they are fetched: names, and the most they may weigh. */
export const GROUPS = required('TINWAVE_WEIGHT')
  .trim()
  .split('\n')
  .map((line) => line.split(' '))
  .map(([bar, ...names]) => ({ bar: Number(bar), names }));
/** Names of the files of long work and printing; of all files that no first visit fetches. */
export const FOR_WORK = GROUPS.at(-1).names;
export const LATER = GROUPS.slice(1).flatMap(({ names }) => names);
const SERVER = required('TINWAVE_SERVER');

const LIMIT_MS = 120_000;
/** How long any one thing on the page may take on a busy machine. */
export const PATIENCE_MS = 30_000;

const ARGUMENTS = [
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

let launched;

/** The browser of this file, started when first asked for. */
export function browser(extra = []) {
  launched ??= chromium.launch({
    executablePath: required('TINWAVE_CHROMIUM'),
    // Chromium refuses its sandbox to root, who tests on build machines.
    args: process.getuid?.() === 0 ? ['--no-sandbox', ...ARGUMENTS, ...extra] : [...ARGUMENTS, ...extra],
  });
  return launched;
}

after(async () => {
  if (launched) await (await launched).close();
});

/** One test of a scenario file. */
export function scenario(name, body, timeout = LIMIT_MS) {
  test(name, { timeout }, body);
}

function started(parameters) {
  const child = spawn(SERVER, ['serve', ...parameters], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines = createInterface({ input: child.stdout });
  return new Promise((done, failed) => {
    child.once('error', failed);
    child.once('exit', (code) => failed(new Error(`the server ended at once (${code})`)));
    lines.once('line', (line) => done({ child, url: line.split(' ').pop() }));
  });
}

/** Serves a folder until the test ends. */
export async function serve(t, { folder = FIRST, prefix = '/' } = {}) {
  const base = ['--out', folder, '--prefix', prefix];
  let { child, url } = await started([...base, '--port', '0']);
  const { port } = new URL(url);
  const stop = async () => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    const gone = new Promise((done) => child.once('exit', done));
    child.kill();
    await gone;
  };
  t.after(stop);
  const restart = async () => {
    ({ child } = await started([...base, '--port', port]));
  };
  return { url, stop, restart };
}

/** An empty folder until the test ends. */
export async function scratch(t) {
  const folder = await mkdtemp(join(tmpdir(), 'tinwave-test-'));
  t.after(() => rm(folder, { recursive: true, force: true }));
  return folder;
}

/** A copy that the test may change. */
export async function copyOf(t, folder) {
  const copy = await scratch(t);
  await cp(folder, copy, { recursive: true });
  return copy;
}

/** Puts another version in a served folder's place, as a static host does: the old files are gone. */
export async function deploy(from, to) {
  for (const name of await readdir(to)) await rm(join(to, name), { recursive: true });
  await cp(from, to, { recursive: true });
}

/** The one file of a built page whose name matches. */
export async function fileLike(folder, pattern) {
  const found = (await readdir(folder)).filter((name) => pattern.test(name));
  assert.equal(found.length, 1, `${pattern} names one file, not ${found}`);
  return found[0];
}

/** A fresh profile: its own storage, caches and workers. */
export async function profile(t, options = {}) {
  const { width = 1280, height = 800, ...rest } = options;
  const context = await (await browser()).newContext({ viewport: { width, height }, ...rest });
  context.setDefaultTimeout(PATIENCE_MS);
  t.after(() => context.close());
  return context;
}

/** Writes down what a page complains of, in `page.problems`. */
export async function openIn(context, url) {
  const page = await context.newPage();
  page.problems = [];
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') page.problems.push(message.text());
  });
  page.on('pageerror', (error) => page.problems.push(String(error)));
  await page.addInitScript(() => {
    addEventListener('securitypolicyviolation', (event) => {
      console.error(`policy violated: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`);
    });
  });
  await page.goto(url);
  return page;
}

/** A page in a profile of its own. Options: width, height, and Playwright's. */
export async function open(t, url, options = {}) {
  return openIn(await profile(t, options), url);
}

/** Waits until the program has started. */
export async function ready(page) {
  await page.locator('html[data-app="ready"]').waitFor({ state: 'attached' });
  return page;
}

/** The version that the page says it is. */
export function version(page) {
  return page.locator('meta[name="version"]').getAttribute('content');
}

/** Waits until a newer page is offered: its buttons `take` and `later`. */
export async function offered(page) {
  await page.locator('html[data-update="ready"]').waitFor({ state: 'attached' });
  const notice = buttons(page);
  await notice.take.waitFor();
  return notice;
}

const buttons = (page) => ({
  take: page.getByRole('button', { name: 'Take it' }),
  later: page.getByRole('button', { name: 'Later' }),
});

/** Fails if a newer page is offered. */
export async function checkNothingOffered(page) {
  assert.equal(await page.locator('html').getAttribute('data-update'), null);
  assert.equal(await buttons(page).take.isVisible(), false);
}

/** Waits until the first version is kept for use without a network. */
export async function keptOffline(page) {
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active.state === 'activated') return;
    await new Promise((done) => active.addEventListener('statechange', done, { once: true }));
  });
}

/** Waits until all of it is kept: what is fetched later, too. The page says so itself. */
export async function allKept(page) {
  await page.locator('html[data-offline="kept"]').waitFor({ state: 'attached' });
}

/** Fails for anything that the page complained of so far. */
export async function checkQuiet(page) {
  await page.evaluate(() => new Promise((done) => setTimeout(done, 100))); // Reports come a little late.
  assert.deepEqual(page.problems, [], 'console errors, warnings, exceptions, policy violations');
}

/** Fails for any accessibility violation, with what and where. */
export async function checkAxe(page, where = '') {
  const { violations } = await new AxeBuilder({ page }).analyze();
  const told = violations.map((v) => `${where} ${v.id}: ${v.nodes.map((n) => n.target.join(' ')).join(' | ')}`);
  assert.deepEqual(told, []);
}

/** Every station, by its word in the address. */
export const STATIONS = ['can', 'feed', 'beam', 'make', 'measure', 'link', 'shelf'];

/** Opens a station for a can (keys of a link). */
export async function atStation(page, url, station, can) {
  const at = station === 'can' ? '' : `at=${station}&`;
  await page.goto(`${url}#v=1&${at}u=best&${can}`);
  await page.locator(`.station.${station}`).waitFor();
}

/** Waits until the worker has nothing better to say of the present can. */
export async function settled(page) {
  await page.waitForTimeout(120); // What was typed has reached the program.
  await page.evaluate(() => dispatchEvent(new Event('pointerdown'))); // An untouched page asks for nothing.
  await page.locator('html[data-freshness="final"]').waitFor({ state: 'attached' });
  // What comes when the page is first used has come.
  await page.waitForFunction(() => !document.querySelector('[data-coming]'));
  // The address follows the work within half a second.
  await page.waitForTimeout(600);
}

/** The cell of an entry, by its label. */
export const field = (page, label) => page.getByRole('textbox', { name: label }).first();

/** The cell of a headline figure. */
export const figure = (page, name) => page.locator('details.figure').filter({ hasText: name }).first();

/** A page whose worker's program can't be fetched, until it is mended. */
export async function withoutWorker(t, options) {
  const server = await serve(t);
  const context = await profile(t, { ...options, serviceWorkers: 'block' });
  const program = (url) => FOR_WORK.some((name) => name.endsWith('.wasm') && url.pathname.endsWith(name));
  await context.route(program, (route) => route.abort());
  const page = await ready(await openIn(context, server.url));
  return { page, mend: () => context.unroute(program) };
}
