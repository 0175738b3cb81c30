// Stories that every browser must tell alike: in a shop, at home to a PDF, without a
// network, with a measured file. Firefox walks all of them, WebKitGTK the first.

import assert from 'node:assert/strict';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { firefox, webkit } from './engines.mjs';
import { scenario, scratch, serve } from './page.mjs';

const isReady = () => document.documentElement.dataset.app === 'ready';
const isFinal = () => document.documentElement.dataset.freshness === 'final';
const hashOf = (key) => new URLSearchParams(location.hash.slice(1)).get(key);

/** In a page: presses the first visible thing of a kind with these words. */
function press(selector, words) {
  const found = [...document.querySelectorAll(selector)].find(
    (one) => one.checkVisibility() && one.textContent.trim().includes(words),
  );
  if (!found || found.disabled) return false;
  found.click();
  return true;
}

/** In a page: the selector of the entry whose label begins with these words. */
function cellOf(words) {
  const label = [...document.querySelectorAll('label')].find((one) => one.textContent.trim().startsWith(words) && one.htmlFor);
  return label ? `#${CSS.escape(label.htmlFor)}` : '';
}

/** In a page: replaces what an entry holds, as typing does. */
function fill(selector, text) {
  const input = document.querySelector(selector);
  input.focus();
  input.value = text;
  input.dispatchEvent(new InputEvent('input', { bubbles: true }));
  input.dispatchEvent(new Event('change', { bubbles: true }));
  input.blur();
}

async function shop(page, url) {
  await page.goto(url);
  await page.until(isReady);
  await page.run(() => dispatchEvent(new Event('pointerdown')));
  assert.ok(await page.run(press, 'label', 'Paper strip'), 'a choice of the paper strip');
  const strip = await page.until(cellOf, 'Strip, once round');
  await page.run(fill, strip, '277');
  await page.run(fill, await page.until(cellOf, 'Inside length'), '138');
  await page.until(() => location.hash.includes('l=138'));
  await page.until(isFinal);
  // 277 mm round 0.1 mm of paper and a wall of 0.2 mm: 277/π − 0.1 − 0.4 = 87.67 mm.
  assert.match(await page.run(hashOf, 'd'), /^87\.67/);
  assert.match(await page.run(() => document.querySelector('h1').textContent), /^Will do/);
  const figures = await page.run(() => [...document.querySelectorAll('.figure')].map((one) => one.textContent));
  assert.equal(figures.length, 4);
  for (const text of figures) assert.match(text, /\d/, text);
  assert.deepEqual(page.problems, []);
}

scenario('Firefox: in the shop', async (t) => {
  const { url } = await serve(t);
  await shop(await firefox(t), url);
});

scenario('WebKitGTK: in the shop', async (t) => {
  const { url } = await serve(t);
  await shop(await webkit(t), url);
});

scenario('Firefox: at home, to a PDF', async (t) => {
  const { url } = await serve(t);
  const page = await firefox(t);
  await shop(page, url);
  await page.run(() => {
    window.saved = [];
    const real = URL.createObjectURL;
    URL.createObjectURL = (blob) => {
      window.saved.push([blob.type, blob.size]);
      return real.call(URL, blob);
    };
  });
  assert.ok(await page.run(press, 'nav a', 'Make'));
  await page.until(press, 'button', 'Save PDF');
  await page.until(() => window.saved.some(([type, size]) => type === 'application/pdf' && size > 2_000));
  assert.deepEqual(page.problems, []);
});

scenario('Firefox: without a network', async (t) => {
  const { url, stop } = await serve(t);
  const page = await firefox(t);
  await shop(page, url);
  await page.until(() => document.documentElement.dataset.offline === 'kept');
  await stop();
  await page.reload();
  await page.until(isReady);
  await page.run(() => dispatchEvent(new Event('pointerdown')));
  await page.until(isFinal);
  assert.match(await page.run(hashOf, 'd'), /^87\.67/);
});

scenario('Firefox: a measured file', async (t) => {
  const { url } = await serve(t);
  const page = await firefox(t);
  await page.goto(`${url}#v=1&at=measure&b=2400-2483.5&d=87&l=190&w=0.2&r=4&pw=1.29&pl=31.25&pd=69.81`);
  await page.until(isReady);
  await page.until(isFinal);
  await page.until(() => document.querySelector('h1') !== null);
  // Made up for this test: a match that is fair all over the band.
  const lines = ['# MHZ S MA R 50'];
  for (let mhz = 2300; mhz <= 2600; mhz += 5) lines.push(`${mhz} ${(0.1 + Math.abs(mhz - 2440) / 1000).toFixed(4)} ${(mhz - 2440) * 0.6}`);
  const file = join(await scratch(t), 'orchard.s1p');
  await writeFile(file, lines.join('\n'));
  const before = await page.run(() => document.querySelector('h1').textContent);
  await page.upload('input[type=file]', file);
  await page.until((was) => document.querySelector('h1').textContent !== was, before);
  assert.deepEqual(page.problems, []);
});
