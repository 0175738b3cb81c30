// The whole page by keyboard alone: everything that can be used is reached by Tab, in
// sight when it is, and nothing holds the focus; a can is worked out without a pointer.

import assert from 'node:assert/strict';
import { atStation, checkQuiet, open, ready, scenario, serve, settled, STATIONS } from './page.mjs';

const CAN = 'b=2400-2483.5&d=87&l=190&w=0.2&r=4&pw=1.29&pl=31.25&pd=69.81';

/** What has the focus, and whether it can be seen. */
const focused = (page) =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (!element || element === document.body) return null;
    // A ring may stand round the whole cell, or the label of a hidden radio button.
    const shown = element.labels?.[0] ?? element;
    const box = (element.checkVisibility() && element.getBoundingClientRect().width > 2 ? element : shown).getBoundingClientRect();
    window.walked ??= new Map();
    if (!window.walked.has(element)) window.walked.set(element, window.walked.size);
    return {
      index: window.walked.get(element),
      name: element.id || element.className || element.textContent.trim().slice(0, 30) || element.tagName,
      inSight: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
      shown: element.matches(':focus-visible'),
    };
  });

for (const [width, height] of [[360, 740], [1366, 850]]) {
  scenario(`Tab goes through every station, always in sight, and comes out at the end: ${width} px`, async (t) => {
    const { url } = await serve(t);
    const page = await ready(await open(t, url, { width, height }));
    for (const station of STATIONS) {
      await atStation(page, url, station, CAN);
      await settled(page);
      await page.evaluate(() => {
        // From the very beginning: a station that is opened has put the focus on its heading,
        // and Tab would go on from there.
        document.body.tabIndex = -1;
        document.body.focus();
        document.body.removeAttribute('tabindex');
        window.walked = undefined;
        scrollTo(0, 0);
      });
      const wanted = await page.evaluate(() => {
        const usable = 'a[href], button, input, select, textarea, summary, [tabindex="0"]';
        const radios = new Map();
        let count = 0;
        for (const e of document.querySelectorAll(usable)) {
          if (e.disabled || e.tabIndex < 0 || e.type === 'hidden') continue;
          if (!(e.labels?.[0] ?? e).checkVisibility({ visibilityProperty: true })) continue;
          if (e.type === 'radio') radios.set(e.name, true);
          else count += 1;
        }
        return count + radios.size;
      });
      const walked = new Set();
      for (let press = 0; press < wanted + 80; press++) {
        await page.keyboard.press('Tab');
        const at = await focused(page);
        if (!at || (walked.has(at.index) && at.index === 0)) break;
        assert.ok(at.inSight, `${station}: ${at.name} has the focus out of sight`);
        assert.ok(at.shown, `${station}: ${at.name} shows no focus`);
        walked.add(at.index);
      }
      // Work that ended meanwhile may have taken a button away or brought one.
      assert.ok(walked.size >= wanted - 3, `${station}: ${walked.size} of ${wanted}`);
    }
    await checkQuiet(page);
  }, 240_000);
}

scenario('a can is worked out by keys alone', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, { width: 1366, height: 850 }));
  const tabTo = async (wanted) => {
    for (let press = 0; press < 200; press++) {
      const name = await page.evaluate(() => {
        const e = document.activeElement;
        return e.getAttribute('aria-label') || e.labels?.[0]?.textContent || e.textContent;
      });
      if (wanted.test(name.trim())) return;
      await page.keyboard.press('Tab');
    }
    assert.fail(`Tab does not reach ${wanted}`);
  };
  await tabTo(/^Across the inside/);
  await page.keyboard.press('Control+A');
  await page.keyboard.type('90');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => /d=90(&|$)/.test(location.hash));
  await page.keyboard.press('Control+z');
  await page.waitForFunction(() => /d=87(&|$)/.test(location.hash));
  await page.keyboard.press('Control+Shift+Z');
  await page.waitForFunction(() => /d=90(&|$)/.test(location.hash));
  await settled(page);
  await atStation(page, url, 'feed', CAN);
  await settled(page);
  const knob = page.getByRole('slider').first();
  await knob.focus();
  const before = await page.evaluate(() => location.hash);
  await page.keyboard.press('ArrowUp');
  await page.waitForFunction((hash) => location.hash !== hash && !location.hash.includes('u=best'), before);
  await checkQuiet(page);
});
