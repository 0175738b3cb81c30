// The full-wave beam on the page: an estimate at once, the solution from the
// worker after it, and a page that stays quick meanwhile.

import assert from 'node:assert/strict';
import { PATIENCE_MS, checkAxe, checkQuiet, open, ready, scenario, serve } from './page.mjs';

const SAYS = '[data-text=solving]';

async function working(page) {
  await ready(page);
  // Until the page is touched, the full computation is not fetched.
  assert.doesNotMatch(await page.textContent(SAYS), /^Computed/);
  await page.mouse.move(20, 20);
  await page.locator('#beam').waitFor();
  return page;
}

async function solved(page) {
  await page.waitForFunction(
    (says) => /^Computed for this can/.test(document.querySelector(says).textContent),
    SAYS,
    { timeout: PATIENCE_MS },
  );
}

const value = async (page, name) => Number.parseFloat(await page.textContent(`[data-text=${name}]`));

scenario('the solution takes the place of the estimate', async (t) => {
  const { url } = await serve(t);
  // 90 mm wide, 205 mm long, 2437 MHz: 7.876 dBi, 76.6 by 75.7 degrees, 12.4 dB
  // front to back (own body-of-revolution calculation with other code).
  const page = await working(await open(t, `${url}#v=1&b=2401-2473&d=90&l=205&pw=1.29&pl=28.4&pd=45`, { width: 360, height: 740 }));
  await solved(page);
  const near = async (name, wanted, within) => {
    const got = await value(page, name);
    assert.ok(Math.abs(got - wanted) <= within, `${name}: ${got}, not ${wanted}`);
  };
  await near('directivity', 7.876, 0.15);
  await near('width-e', 76.58, 1);
  await near('width-h', 75.69, 1);
  await near('front-to-back', 12.4, 0.6);
  const path = await page.getAttribute('.pic-polar .pic-beam-e', 'd');
  assert.ok(path.length > 500, 'a pattern is drawn');
  assert.doesNotMatch(path, /NaN|inf/i);
  await checkAxe(page);
  await checkQuiet(page);
});

scenario('a moved probe needs no new solution, another mouth does', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, { width: 1280, height: 900 }));
  await solved(page);
  await page.fill('#probe-length', '30');
  assert.match(await page.textContent(SAYS), /^Computed/);
  const open_gain = await value(page, 'directivity');
  await page.selectOption('#mouth', 'funnel');
  await page.locator('#mouth-diameter').waitFor();
  await solved(page);
  const funnel_gain = await value(page, 'directivity');
  assert.ok(funnel_gain > open_gain + 2, `${open_gain} dBi, with a funnel ${funnel_gain}`);
  assert.match(await page.evaluate(() => location.hash), /mo=funnel/);
  await page.click('#undo');
  await solved(page);
  assert.equal(await value(page, 'directivity'), open_gain, 'known from before');
});

scenario('the page keeps its frames while a large funnel is solved, and can stop it', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, { width: 1280, height: 900 }));
  await solved(page);
  await page.waitForTimeout(1_000);
  await page.selectOption('#mouth', 'funnel');
  const gaps = await page.evaluate(async (says) => {
    const input = document.querySelector('#mouth-diameter');
    input.value = '240';
    input.dispatchEvent(new InputEvent('input', { bubbles: true }));
    await new Promise((done) => setTimeout(done, 150));
    const found = [];
    let before = performance.now();
    const running = () => !/^Computed/.test(document.querySelector(says).textContent);
    const end = before + 20_000;
    while (running() && before < end) {
      await new Promise((done) => requestAnimationFrame(done));
      found.push(performance.now() - before);
      before = performance.now();
    }
    return found.sort((a, b) => a - b);
  }, SAYS);
  const median = gaps[Math.floor(gaps.length / 2)];
  console.log(`frames while solving: ${gaps.length}, median ${median?.toFixed(1)} ms, longest ${gaps.at(-1)?.toFixed(1)} ms`);
  assert.ok(median <= 20, `${median}`);
  await page.fill('#mouth-diameter', '250');
  await page.click('[data-do=stop-solving]');
  assert.match(await page.textContent(SAYS), /^Stopped/);
  await page.click('[data-do=solve-again]');
  await solved(page);
});
