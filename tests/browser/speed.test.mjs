// How long the page works between a key and the repaint, and whether anything ever holds
// it up. Bars are for an idle machine: the best of a few rounds counts, because a busy
// machine makes a round slower than the page is.

import assert from 'node:assert/strict';
import { open, ready, scenario, serve, settled } from './page.mjs';

const ROUNDS = 4;
const KEYS = 24;

/** Types other diameters; gives the milliseconds worked for each, layout and drawing included. */
async function round(page, offset) {
  return page.evaluate(
    async ({ keys, offset }) => {
      const input = document.querySelector('#field-insidediameter');
      const real = window.requestAnimationFrame;
      let drawing = 0;
      window.requestAnimationFrame = (run) =>
        real.call(window, (now) => {
          const begun = performance.now();
          run(now);
          drawing += performance.now() - begun;
        });
      const frame = () => new Promise((done) => real.call(window, () => setTimeout(done, 0)));
      const worked = [];
      input.focus();
      for (let i = 0; i < keys; i++) {
        await frame();
        drawing = 0;
        const begun = performance.now();
        input.value = String(80 + offset + i * 0.4).slice(0, 6);
        input.dispatchEvent(new InputEvent('input', { bubbles: true }));
        await new Promise((done) => queueMicrotask(() => queueMicrotask(done)));
        void document.body.offsetHeight;
        const typed = performance.now() - begun;
        await frame();
        await frame();
        worked.push(typed + drawing);
      }
      window.requestAnimationFrame = real;
      return worked.sort((a, b) => a - b);
    },
    { keys: KEYS, offset },
  );
}

async function started(t, url, options) {
  const page = await ready(await open(t, url, options));
  await settled(page);
  return page;
}

scenario('a key is followed by everything on the page within one frame', async (t) => {
  const { url } = await serve(t);
  const page = await started(t, url, { width: 1366, height: 850 });
  const medians = [];
  for (let i = 0; i < ROUNDS; i++) {
    const worked = await round(page, i * 0.03);
    medians.push(worked[KEYS / 2]);
    console.log(`key to repaint: median ${worked[KEYS / 2].toFixed(1)} ms, longest ${worked.at(-1).toFixed(1)} ms`);
  }
  // The aim is 16 ms; twice that is for busy machines.
  assert.ok(Math.min(...medians) <= 32, `${medians}`);
});

scenario('on a processor of a quarter the speed a key is still followed soon', async (t) => {
  const { url } = await serve(t);
  const page = await started(t, url, { width: 360, height: 740 });
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  const medians = [];
  for (let i = 0; i < ROUNDS; i++) {
    const worked = await round(page, i * 0.03);
    medians.push(worked[KEYS / 2]);
    console.log(`slowed: median ${worked[KEYS / 2].toFixed(1)} ms, longest ${worked.at(-1).toFixed(1)} ms`);
  }
  // The aim is 50 ms; the rest is for busy machines.
  assert.ok(Math.min(...medians) <= 150, `${medians}`);
});

scenario('working out another can never holds the page up', async (t) => {
  const { url } = await serve(t);
  const page = await started(t, url, { width: 1366, height: 850 });
  const results = [];
  for (let i = 0; i < ROUNDS; i++) {
    const result = await page.evaluate(async (diameter) => {
      const long = [];
      const observer = new PerformanceObserver((list) => long.push(...list.getEntries().map((e) => e.duration)));
      observer.observe({ type: 'longtask' });
      const input = document.querySelector('#field-insidediameter');
      input.focus();
      input.value = String(diameter);
      input.dispatchEvent(new InputEvent('input', { bubbles: true }));
      const from = performance.now();
      await new Promise((done) => setTimeout(done, 30));
      while (document.documentElement.dataset.freshness !== 'final' && performance.now() - from < 10_000) {
        await new Promise((done) => setTimeout(done, 5));
      }
      observer.disconnect();
      return { took: performance.now() - from, long };
    }, 84.1 + i);
    console.log(`worked out after ${result.took.toFixed(0)} ms, tasks over 50 ms: ${result.long.length}`);
    results.push(result);
  }
  assert.ok(results.some(({ long }) => long.length === 0), 'a round without a task over 50 ms');
});
