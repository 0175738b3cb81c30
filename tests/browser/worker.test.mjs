// The worker's thread: nothing said to it is lost, it can be stopped at any time, and the
// page hears when it breaks. Messages are the bytes that travel, made on the host.

import assert from 'node:assert/strict';
import { open, ready, scenario, serve, withoutWorker } from './page.mjs';

const LINES = process.env.TINWAVE_QUESTIONS.trim().split('\n');
const OUTSIDE = LINES.map((line) => line.split(' ')).filter(([kind]) => kind === 'outside');
/** A plain can, some steps of some milliseconds each; and the one with the most steps. */
const PLAIN = OUTSIDE[0][2];
const LONG = OUTSIDE[1][2];
const STOP = process.env.TINWAVE_STOP;

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
      ([question, stop]) => {
        hired.onTold = () => {
          if (stop && hired.told === 1) hired.say(stop);
        };
        hired.say(question);
      },
      [LONG, stop],
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
