// Whole stories of a maker on a phone: in a shop, at home, with somebody's link.

import assert from 'node:assert/strict';
import { atStation, checkQuiet, field, figure, open, openIn, profile, ready, scenario, serve, settled } from './page.mjs';

const PHONE = { width: 360, height: 740 };
const hash = (page, key) => page.evaluate((name) => new URLSearchParams(location.hash.slice(1)).get(name), key);

/** Counts what the maker does, on the whole document. */
async function counted(page) {
  await page.evaluate(() => {
    window.taps = 0;
    addEventListener('pointerup', () => (window.taps += 1), true);
  });
  return () => page.evaluate(() => window.taps);
}

scenario('in the shop: a paper strip of 277, length 138, to the verdict with its cut', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, { ...PHONE, hasTouch: true }));
  const taps = await counted(page);
  await page.locator('label', { hasText: 'Paper strip' }).tap();
  await field(page, /^Strip, once round/).tap();
  await page.keyboard.type('277');
  await field(page, /^Inside length/).tap();
  await page.keyboard.type('138');
  await settled(page);
  assert.ok((await taps()) <= 3, `${await taps()} taps`);
  // 277 mm round 0.1 mm of paper and a wall of 0.2 mm: 277/π − 0.1 − 0.4 = 87.67 mm.
  assert.match(await hash(page, 'd'), /^87\.67/);
  assert.equal(await hash(page, 'l'), '138');
  // The keypad has gone: verdict and figures are in sight without moving the page.
  await page.keyboard.press('Enter');
  await page.evaluate(() => document.activeElement.blur());
  assert.equal(await page.evaluate(() => scrollY), 0);
  const strip = await page.locator('nav').last().boundingBox();
  for (const name of ['Drill at', 'Cut the wire', 'VSWR', 'Gain']) {
    const box = await figure(page, name).boundingBox();
    assert.ok(box.y >= 44 && box.y + box.height <= strip.y + 2, `${name} ends at ${box.y + box.height}`);
  }
  // The cut is that of this can, not the example's.
  assert.notEqual(await hash(page, 'pl'), '31.25');
  assert.equal(await hash(page, 'u'), 'best');
  await checkQuiet(page);
});

scenario('no cut for a can that will not do; two ways on, each worked out', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, PHONE));
  await field(page, /^Across the inside/).fill('155');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: 'Will not do' }).waitFor();
  for (const name of ['Drill at', 'Cut the wire', 'Gain']) assert.equal(await figure(page, name).count(), 0, name);
  for (const station of ['feed', 'beam', 'make']) {
    await page.goto(`${url}#${await page.evaluate(() => location.hash.slice(1))}&at=${station}`);
    await settled(page);
    const text = await page.locator('main').innerText();
    assert.ok(!/\d+(\.\d+)? mm\s+from the (closed|connector)/.test(text), `${station}: ${text}`);
  }
  await page.goto(`${url}#v=1&u=best&b=2400-2483.5&d=155&l=200&pw=1.29&pl=30&pd=50`);
  await settled(page);
  const offers = page.getByRole('button', { name: /VSWR \d/ });
  await offers.first().waitFor();
  const text = await offers.first().innerText();
  await offers.first().click();
  await settled(page);
  assert.notEqual(await hash(page, 'd'), '155', text);
  assert.equal(await page.getByRole('heading', { level: 1 }).innerText() === 'Will not do', false);
  await checkQuiet(page);
});

scenario('the cut follows the best until it is typed; both then stand side by side', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, PHONE));
  await field(page, /^Across the inside/).fill('84');
  await page.keyboard.press('Enter');
  await settled(page);
  const best = [await hash(page, 'pl'), await hash(page, 'pd')];
  assert.notEqual(best[0], '31.25');
  await page.getByRole('link', { name: 'Feed' }).last().click();
  await field(page, /^Wire inside/).fill('28.4');
  await page.keyboard.press('Enter');
  await settled(page);
  assert.equal(await hash(page, 'u'), null);
  assert.equal(await hash(page, 'pl'), '28.4');
  await page.getByRole('button', { name: 'Follow again' }).first().click();
  await settled(page);
  assert.deepEqual([await hash(page, 'pl'), await hash(page, 'pd'), await hash(page, 'u')], [...best, 'best']);
  await checkQuiet(page);
});

scenario('an old link opens as cut, and what it holds is kept', async (t) => {
  const { url } = await serve(t);
  const link = 'v=1&n=Orchard_gate&b=2401-2483.5&d=87&l=190&w=0.2&r=4&pw=1.29&pl=28.4&pd=45';
  const page = await ready(await open(t, `${url}#${link}`, PHONE));
  await settled(page);
  for (const [key, value] of [['pl', '28.4'], ['pd', '45'], ['u', null], ['n', 'Orchard_gate']]) {
    assert.equal(await hash(page, key), value, key);
  }
  // A notice may speak in the name's place for a while.
  await page.locator('header').getByText('Orchard gate').first().waitFor();
  await page.getByRole('link', { name: 'Feed' }).last().click();
  await page.getByText(/As cut/).first().waitFor();
  await checkQuiet(page);
});

scenario('a hostile or broken link harms nothing and says so', async (t) => {
  const { url } = await serve(t);
  for (const bad of ['v=1&d=abc', 'v=1&n=%3Cimg%20src=x%20onerror=alert(1)%3E', 'v=99', 'x'.repeat(3_000)]) {
    const page = await ready(await open(t, `${url}#${bad}`, PHONE));
    await page.getByText(/not opened|newer/i).first().waitFor();
    assert.equal(await page.locator('img[src=x]').count(), 0);
    await page.close();
  }
});

scenario('back walks through stations and changes; undo and redo add nothing', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, PHONE));
  await field(page, /^Across the inside/).fill('84');
  await page.keyboard.press('Enter');
  await settled(page);
  await page.getByRole('link', { name: 'Beam' }).last().click();
  await page.waitForFunction(() => location.hash.includes('at=beam'));
  const before = await page.evaluate(() => history.length);
  await page.getByRole('button', { name: 'Undo' }).click();
  await page.waitForFunction(() => location.hash.includes('d=87'));
  await settled(page);
  assert.equal(await page.evaluate(() => history.length), before);
  await page.keyboard.press('Control+Shift+Z');
  await page.waitForFunction(() => location.hash.includes('d=84'));
  await settled(page);
  assert.equal(await page.evaluate(() => history.length), before);
  await page.goBack();
  await page.waitForFunction(() => !location.hash.includes('at=beam') && location.hash.includes('d=84'));
  await page.goBack();
  await page.waitForFunction(() => location.hash.includes('d=87'));
  await checkQuiet(page);
});

scenario('what was worked on is there at the next visit, with its unit', async (t) => {
  const { url } = await serve(t);
  const context = await profile(t, { width: 1366, height: 850 });
  const page = await ready(await openIn(context, url));
  await field(page, /^Across the inside/).fill('3 7/8 in');
  await page.keyboard.press('Enter');
  await settled(page);
  // 3.875 in of 25.4 mm.
  assert.equal(await hash(page, 'd'), '98.425');
  await page.locator('label', { hasText: /^inch$/ }).first().click();
  await page.waitForTimeout(500);
  await page.close();
  const again = await ready(await openIn(context, url));
  await settled(again);
  assert.equal(await hash(again, 'd'), '98.425');
  assert.match(await field(again, /^Across the inside/).inputValue(), /^3[. ]/);
});

scenario('home: from a cold start to a saved PDF', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, { ...PHONE, hasTouch: true, acceptDownloads: true }));
  const taps = await counted(page);
  let scrolled = 0;
  await page.locator('label', { hasText: 'Paper strip' }).tap();
  await field(page, /^Strip, once round/).tap();
  await page.keyboard.type('277');
  await field(page, /^Inside length/).tap();
  await page.keyboard.type('138');
  await page.keyboard.press('Enter');
  await settled(page);
  await page.getByRole('link', { name: 'Make' }).last().tap();
  const save = page.getByRole('button', { name: 'Save PDF' });
  await save.waitFor();
  await page.waitForFunction(() => {
    const button = [...document.querySelectorAll('button')].find((one) => one.textContent === 'Save PDF');
    return button && !button.disabled;
  });
  await save.scrollIntoViewIfNeeded();
  scrolled += await page.evaluate(() => scrollY);
  const [download] = await Promise.all([page.waitForEvent('download'), save.tap()]);
  assert.match(download.suggestedFilename(), /\.pdf$/);
  assert.ok((await taps()) <= 8, `${await taps()} taps`);
  assert.ok(scrolled <= 1_500, `${scrolled} px of scroll`);
  await checkQuiet(page);
});

scenario('a link opens at the station it names', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, PHONE));
  for (const station of ['feed', 'measure', 'link', 'shelf']) {
    await atStation(page, url, station, 'b=2400-2483.5&d=84&l=180&pw=1.29&pl=30&pd=60');
    assert.equal(await page.locator('nav a[aria-current]').first().getAttribute('href').then((href) => new RegExp(`at=${station}`).test(href)), true);
  }
});
