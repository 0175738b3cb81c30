// A program that does not come, or does not last: the page says so and keeps the link.

import assert from 'node:assert/strict';
import { readFile, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { FIRST, checkAxe, copyOf, fileLike, open, ready, scenario, serve } from './page.mjs';

const WASM = /^app-.*\.wasm$/;
const SCRIPT = /^app-.*\.js$/;

/** A page whose program was spoilt before the visit, opened by a link. */
async function spoilt(t, pattern, spoil) {
  const folder = await copyOf(t, FIRST);
  const name = await fileLike(folder, pattern);
  const file = join(folder, name);
  const whole = await readFile(file);
  await spoil(file, whole);
  const { url } = await serve(t, { folder });
  const link = `${url}#v=1`;
  return { page: await open(t, link), link, repair: () => writeFile(file, whole) };
}

/** One story: the notice, why, and the link. */
async function saysSo(page, link, story = 'load') {
  const notice = page.locator('#trouble');
  await notice.waitFor();
  assert.equal(await notice.getAttribute('role'), 'alert');
  for (const one of ['load', 'stop']) {
    assert.equal(await page.locator(`#trouble-${one}`).isVisible(), one === story, one);
  }
  assert.equal(await page.locator('#trouble-link').inputValue(), link);
  assert.equal(await page.locator('html').getAttribute('data-app'), 'trouble');
  assert.equal(await page.locator('.shell-late').isVisible(), false, 'no second story');
  assert.ok(await page.locator('#app h1').isVisible(), 'the page as it was sent');
}

scenario('the program is missing: said, link kept, and a second try works', async (t) => {
  const { page, link, repair } = await spoilt(t, WASM, (file) => rm(file));
  await saysSo(page, link);
  await checkAxe(page);
  await repair();
  await page.locator('#trouble-reload').click();
  await ready(page);
  assert.equal(await page.locator('#trouble').isVisible(), false);
  assert.ok(page.url().startsWith(link.split('#')[0]), page.url());
});

scenario('the program is cut short: said, link kept', async (t) => {
  const { page, link } = await spoilt(t, WASM, (file, whole) => writeFile(file, whole.subarray(0, whole.length / 2)));
  await saysSo(page, link);
});

scenario('the program is something else: said, link kept', async (t) => {
  const { page, link } = await spoilt(t, WASM, (file) => writeFile(file, '<!doctype html><p>Not here.'));
  await saysSo(page, link);
});

scenario('the script beside it is missing: said, link kept', async (t) => {
  const { page, link } = await spoilt(t, SCRIPT, (file) => rm(file));
  await saysSo(page, link);
});

/** Runs a program that finds itself at fault: its one function is `unreachable`. */
function trap(where) {
  const program = [0, 97, 115, 109, 1, 0, 0, 0, 1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 7, 5, 1, 1, 102, 0, 0, 10, 5, 1, 3, 0, 0, 11];
  const { f } = new WebAssembly.Instance(new WebAssembly.Module(new Uint8Array(program))).exports;
  if (where === 'event') setTimeout(f);
  else Promise.resolve().then(f);
}

scenario('a program that stops later says so, and the link follows', async (t) => {
  const { url } = await serve(t);
  for (const where of ['event', 'promise']) {
    const page = await ready(await open(t, url));
    await page.evaluate(trap, where);
    await saysSo(page, page.url(), 'stop');
  }
});

scenario('an ordinary script error is no alarm', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url));
  await page.evaluate(() => dispatchEvent(new ErrorEvent('error', { error: new Error('of an extension') })));
  assert.equal(await page.locator('#trouble').isVisible(), false);
});

scenario('without its loader the page says so by itself', async (t) => {
  const folder = await copyOf(t, FIRST);
  await rm(join(folder, await fileLike(folder, /^start-.*\.js$/)));
  const { url } = await serve(t, { folder });
  const page = await open(t, url);
  const late = page.locator('.shell-late');
  assert.equal(await late.isVisible(), false, 'not at once');
  const session = await page.context().newCDPSession(page);
  await session.send('Animation.enable');
  await session.send('Animation.setPlaybackRate', { playbackRate: 20 });
  await late.waitFor();
  assert.ok((await late.innerText()).length > 20, 'a sentence');
});

scenario('without script the page still says what it is', async (t) => {
  const { url } = await serve(t);
  const page = await open(t, url, { javaScriptEnabled: false });
  assert.ok(await page.locator('h1').isVisible(), 'a heading');
  assert.ok((await page.locator('main').innerText()).length > 100, 'text to read');
  assert.ok(await page.locator('noscript').isVisible(), 'what is missing');
  for (const hidden of ['#trouble', '.shell-late']) {
    assert.equal(await page.locator(hidden).isVisible(), false, hidden);
  }
});
