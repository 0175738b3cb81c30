// What is painted before the program runs is what the program shows: same words, same
// places, in light and in dark. Nothing moves when it takes over.

import assert from 'node:assert/strict';
import { open, ready, scenario, serve } from './page.mjs';

const SIZES = [
  { width: 360, height: 740 },
  { width: 1366, height: 850 },
];

/** Words of the page, and where its larger parts stand. */
function look(page) {
  return page.evaluate(() => {
    document.querySelector('noscript').remove(); // It stands above, where there is no script.
    const app = document.getElementById('app');
    const words = app.innerText.split(/\s+/).filter(Boolean);
    const parts = [...app.querySelectorAll('header, nav, main, h1, h2, svg[role], figure')];
    const places = parts
      .map((part) => [part, part.getBoundingClientRect()])
      .filter(([, { width }]) => width > 2) // What only print shows, or only those who hear.
      .map(([part, { left, top, width, height }]) => {
        // Numbered names are given anew.
        const name = (part.id || part.getAttribute('aria-label') || part.localName).replace(/-\d+$/, '');
        return `${name}: ${[left, top, width, height].map(Math.round).join(' ')}`;
      });
    return { words, places };
  });
}

for (const size of SIZES) {
  for (const colorScheme of ['light', 'dark']) {
    scenario(`at ${size.width} px, ${colorScheme}, the program takes over like by like`, async (t) => {
      const { url } = await serve(t);
      const sent = await look(await open(t, url, { ...size, colorScheme, javaScriptEnabled: false }));
      assert.ok(sent.words.length > 100, `${sent.words.length} words`);
      const running = await look(await ready(await open(t, url, { ...size, colorScheme })));
      assert.deepEqual(running.words, sent.words);
      assert.deepEqual(running.places, sent.places);
    });
  }

  scenario(`at ${size.width} px nothing moves while it loads`, async (t) => {
    const { url } = await serve(t);
    const page = await open(t, 'about:blank', size);
    await page.addInitScript(() => {
      window.shifts = [];
      new PerformanceObserver((list) => {
        for (const { value, sources } of list.getEntries()) {
          shifts.push({ value, what: sources.map(({ node }) => node?.className || node?.nodeName) });
        }
      }).observe({ type: 'layout-shift', buffered: true });
    });
    await page.goto(url);
    await ready(page);
    await page.waitForTimeout(1000);
    const shifts = await page.evaluate(() => shifts);
    const sum = shifts.reduce((total, { value }) => total + value, 0);
    assert.ok(sum <= 0.01, JSON.stringify(shifts));
  });
}

scenario('a design of one\u2019s own never shows the example in its place', async (t) => {
  const { url } = await serve(t);
  const page = await open(t, 'about:blank');
  await page.route(/app-.*\.wasm/, async (route) => {
    await new Promise((done) => setTimeout(done, 1500));
    await route.continue();
  });
  await page.goto(`${url}#v=1&b=2400-2483.5&d=99&l=200`);
  await page.locator('html[data-app="loading"]').waitFor({ state: 'attached' });
  assert.equal(await page.locator('#app #answer').isVisible(), false);
  await ready(page);
  assert.ok(await page.locator('#app #answer').isVisible());
});
