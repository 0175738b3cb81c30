// The whole page by keyboard alone: everything that can be used is reached by Tab, in
// sight when it is, and nothing holds the focus; a can is worked out without a pointer.

import assert from 'node:assert/strict';
import { checkQuiet, open, ready, scenario, serve } from './page.mjs';

async function working(page) {
  await ready(page);
  await page.locator('#print-form').waitFor();
  return page;
}

/** What has the focus, and whether it can be seen. */
const focused = (page) =>
  page.evaluate(() => {
    const element = document.activeElement;
    if (!element || element === document.body) return null;
    const box = element.getBoundingClientRect();
    const style = getComputedStyle(element);
    const shown = element.matches(':focus-visible');
    // A native box shows its ring round its label's picture or itself.
    const ringed = style.outlineStyle !== 'none' || style.boxShadow !== 'none' || element.matches('svg *');
    window.walked ??= new Map();
    if (!window.walked.has(element)) window.walked.set(element, window.walked.size);
    return {
      index: window.walked.get(element),
      name: element.id || element.dataset.do || element.className || element.textContent.trim().slice(0, 30) || element.tagName,
      inSight: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
      ring: shown && ringed,
    };
  });

for (const [what, parts] of [['the page', []], ['every part unfolded', ['horn', 'measure', 'spread', 'plan']]]) {
  scenario(`Tab goes through everything, always in sight, and comes out at the end: ${what}`, async (t) => {
    const { url } = await serve(t);
    const page = await working(await open(t, url, { width: 360, height: 740 }));
    await page.locator('#offline-close').click();
    // The searches have come to rest: what they find puts new buttons into the page.
    await page.waitForFunction(() => /^Computed/.test(document.querySelector('[data-text=solving]').textContent));
    for (const part of parts) {
      await page.click(`#${part} > details > summary`);
      await page.locator(`#${part} form`).waitFor();
    }
    await page.waitForTimeout(parts.length ? 3_000 : 500);
    await page.locator('[data-value=pair-progress]').waitFor({ state: 'hidden' });
    await page.evaluate(() => {
      document.activeElement.blur();
      scrollTo(0, 0);
    });
    // Where was clicked last, Tab goes on from.
    await page.locator('h1').click();
    const wanted = await page.evaluate(() => {
      const usable = 'a[href], button, input, select, textarea, summary, [tabindex="0"]';
      return [...document.querySelectorAll(usable)].filter(
        (e) => !e.disabled && e.tabIndex >= 0 && e.checkVisibility({ visibilityProperty: true }) && e.type !== 'hidden',
      ).length;
    });
    const walked = new Set();
    for (let press = 0; press < wanted + 60; press++) {
      await page.keyboard.press('Tab');
      const at = await focused(page);
      if (!at || (walked.has(at.index) && at.index === 0)) break;
      assert.ok(at.inSight, `${at.name} has the focus out of sight`);
      assert.ok(at.ring, `${at.name} shows no focus`);
      walked.add(at.index);
    }
    // Of each group of radio buttons Tab reaches one.
    const spared = await page.evaluate(() => {
      const groups = new Map();
      for (const radio of document.querySelectorAll('input[type=radio]')) {
        if (radio.checkVisibility()) groups.set(radio.name, (groups.get(radio.name) ?? 0) + 1);
      }
      return [...groups.values()].reduce((sum, count) => sum + count - 1, 0);
    });
    assert.ok(walked.size >= wanted - spared, `${walked.size} of ${wanted - spared}`);
    assert.ok(walked.size > 60, `${walked.size}`);
  });
}

scenario('a can is worked out by keys alone', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, { width: 1280, height: 900 }));
  const hash = (key) => page.evaluate((name) => new URLSearchParams(location.hash.slice(1)).get(name), key);
  const tabTo = async (selector) => {
    for (let press = 0; press < 200; press++) {
      if (await page.evaluate((wanted) => document.activeElement?.matches(wanted), selector)) return;
      await page.keyboard.press('Tab');
    }
    assert.fail(`Tab does not reach ${selector}`);
  };
  await tabTo('#inside-diameter');
  await page.keyboard.press('Control+A');
  await page.keyboard.type('90');
  await page.keyboard.press('Enter');
  assert.equal(await hash('d'), '90');
  await page.keyboard.press('ArrowUp');
  await page.waitForFunction(() => /d=90\.\d/.test(location.hash));
  await page.keyboard.press('Control+z');
  await page.waitForFunction(() => /d=90(&|$)/.test(location.hash));
  await tabTo('.pic-handle-tip');
  const length = Number(await page.getAttribute('.pic-handle-tip', 'aria-valuenow'));
  await page.keyboard.press('ArrowUp');
  assert.notEqual(Number(await page.getAttribute('.pic-handle-tip', 'aria-valuenow')), length);
  // A part that is fetched when it is wanted opens by a key too.
  await tabTo('#horn > details > summary');
  await page.keyboard.press('Enter');
  await page.locator('#horn form').waitFor();
  await tabTo('#horn .pic-point');
  await page.keyboard.press('Enter');
  await page.waitForFunction(() => /mo=funnel/.test(location.hash));
  await checkQuiet(page);
});
