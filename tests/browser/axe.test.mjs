// Accessibility of every station: narrow and wide, light and dark; letters at twice their
// size; what is pressed is large enough; no station is longer than it may be.

import assert from 'node:assert/strict';
import { atStation, checkAxe, checkQuiet, open, ready, scenario, serve, settled, STATIONS } from './page.mjs';

/** Cans that will do, will do with care, and will not do. */
const CANS = {
  'will do': 'b=2400-2483.5&d=87&l=190&pw=1.29&pl=31.25&pd=69.81',
  'with care': 'b=2400-2483.5&d=99&l=180&pw=1.29&pl=30&pd=50',
  'will not do': 'b=2400-2483.5&d=155&l=200&pw=1.29&pl=30&pd=50',
};

for (const width of [360, 1366]) {
  for (const colorScheme of ['light', 'dark']) {
    scenario(`no violation in any station at ${width} px, ${colorScheme}`, async (t) => {
      const { url } = await serve(t);
      const page = await ready(await open(t, url, { width, height: width === 360 ? 740 : 850, colorScheme }));
      for (const [grade, can] of Object.entries(CANS)) {
        for (const station of STATIONS) {
          await atStation(page, url, station, can);
          await settled(page);
          await checkAxe(page, `${station}, ${grade}`);
          // The build sheet's own is on paper only.
          assert.equal(await page.getByRole('heading', { level: 1 }).count(), 1, `${station}: one h1`);
        }
      }
      await checkQuiet(page);
    }, 300_000);
  }
}

for (const [width, height, screens] of [[1366, 850, 2], [360, 740, 4]]) {
  scenario(`every station within ${screens} screens of ${width} x ${height}, folds shut`, async (t) => {
    const { url } = await serve(t);
    const page = await ready(await open(t, url, { width, height }));
    const long = [];
    for (const can of [CANS['will do'], CANS['with care'], CANS['will not do']]) {
      for (const station of STATIONS) {
        await atStation(page, url, station, can);
        await settled(page);
        const [tall, wide] = await page.evaluate(() => [
          document.documentElement.scrollHeight,
          document.documentElement.scrollWidth - innerWidth,
        ]);
        if (tall > screens * height) long.push(`${station} ${tall} px, ${can.slice(15, 20)}`);
        assert.ok(wide <= 0, `${station} is ${wide} px too wide`);
      }
    }
    assert.deepEqual(long, []);
  }, 180_000);
}

scenario('letters of twice the size on a narrow phone: nothing is cut off at the side', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, { width: 360, height: 740 }));
  for (const can of Object.values(CANS)) {
    for (const station of STATIONS) {
      await atStation(page, url, station, can);
      await settled(page);
      await page.evaluate(() => {
        document.documentElement.style.fontSize = '200%';
      });
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(wide <= 0, `${station} is ${wide} px too wide`);
    }
  }
}, 180_000);

scenario('what is pressed is 44 px or more in both directions', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, { width: 360, height: 740 }));
  const small = new Set();
  for (const can of Object.values(CANS)) {
    for (const station of STATIONS) {
      await atStation(page, url, station, can);
      await settled(page);
      const found = await page.evaluate(() => {
        const pressed = [...document.querySelectorAll('button, select, summary, input:not([type=hidden]), a[href]')];
        const told = [];
        for (const element of pressed) {
          if (!element.checkVisibility({ visibilityProperty: true, opacityProperty: true })) continue;
          if (element.closest('.unseen, .skip')) continue;
          // Words within a sentence are exempt (WCAG 2.2, 2.5.8, "Inline").
          if (element.closest('p, .note') && getComputedStyle(element).display.startsWith('inline')) continue;
          const label = element.labels?.[0] ?? element.closest('label');
          const boxes = [element, label].filter(Boolean).map((one) => one.getBoundingClientRect());
          const width = Math.max(...boxes.map((box) => box.width));
          const height = Math.max(...boxes.map((box) => box.height));
          if (Math.min(width, height) < 43.5) {
            told.push(`${element.tagName} ${element.className} "${element.textContent.trim().slice(0, 20)}" ${Math.round(width)} x ${Math.round(height)}`);
          }
        }
        return told;
      });
      for (const one of found) small.add(`${station}: ${one}`);
    }
  }
  assert.deepEqual([...small], []);
}, 180_000);
