// The worker's thread: nothing said to it is lost, it can be stopped at any time, and the
// page hears when it breaks. Messages are the bytes that travel, made on the host.

import assert from 'node:assert/strict';
import { open, ready, scenario, serve, withoutWorker } from './page.mjs';

/** Questions of some steps of some milliseconds each. */
const QUESTIONS = process.env.TINWAVE_QUESTIONS.trim()
  .split('\n')
  .map((line) => line.split(' ')[2]);
const [PLAIN] = QUESTIONS;
const STOP = process.env.TINWAVE_STOP;
assert.ok(STOP, 'the bytes of a stop');

/** Puts a worker into the page: `said(hex)` speaks to it, `told` is how often it spoke, `broke` whether. */
function hire(page) {
  return page.evaluate(() => {
    const worker = new Worker(document.documentElement.dataset.worker, { type: 'module' });
    const bytes = (hex) => Uint8Array.from(hex.match(/../g), (digits) => Number.parseInt(digits, 16));
    window.hired = { told: 0, broke: false, say: (hex) => worker.postMessage(bytes(hex)) };
    worker.onmessage = () => {
      hired.told += 1;
      hired.onTold?.();
    };
    worker.onerror = () => {
      hired.broke = true;
    };
  });
}

/** How often the worker has spoken when it has been quiet for a second. */
async function untilQuiet(page) {
  for (let before = -1; ; ) {
    const told = await page.evaluate(() => hired.told);
    if (told === before) return told;
    before = told;
    await page.waitForTimeout(1000);
  }
}

scenario('what is said before the program is there is heard, and so is what comes after', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url));
  await hire(page);
  await page.evaluate((hex) => hired.say(hex), PLAIN);
  await page.waitForFunction(() => hired.told > 1);
  const before = await untilQuiet(page);
  await page.evaluate((hex) => hired.say(hex), PLAIN); // Its bell rings again.
  await page.waitForFunction((count) => hired.told > count, before);
});

scenario('a stop is heard between two steps', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url));
  const rounds = {};
  for (const [name, stop] of [['whole', ''], ['stopped', STOP]]) {
    await hire(page);
    await page.evaluate(
      ([questions, stop]) => {
        hired.onTold = () => {
          if (stop && hired.told === 1) hired.say(stop);
        };
        for (const question of questions) hired.say(question);
      },
      [QUESTIONS, stop],
    );
    await page.waitForFunction(() => hired.told >= 1);
    rounds[name] = await untilQuiet(page);
  }
  console.log(`told ${rounds.whole} times, after a stop ${rounds.stopped}`);
  assert.ok(rounds.whole > 4, `${rounds.whole}`);
  assert.ok(rounds.stopped < rounds.whole, `${rounds.stopped} of ${rounds.whole}`);
});

scenario('a program that does not come is heard of, and the page goes on', async (t) => {
  const { page } = await withoutWorker(t);
  await hire(page);
  await page.waitForFunction(() => hired.broke);
  assert.equal(await page.locator('html').getAttribute('data-app'), 'ready');
  assert.equal(await page.locator('#trouble').isVisible(), false);
});
