// A maker's work on the page at the width of a phone: type, drag, undo, share,
// come back, and what a broken link or entry may not do.

import assert from 'node:assert/strict';
import { PATIENCE_MS, checkAxe, checkQuiet, open, openIn, profile, ready, scenario, serve, withoutWorkbench } from './page.mjs';

const PHONE = { width: 360, height: 740 };
const DIAMETER = '#inside-diameter';
const TIP = '.pic-handle-tip';
const BODY = '.pic-handle-body';

const fragment = (page) => page.evaluate(() => location.hash);
const inFragment = async (page, key) => new URLSearchParams((await fragment(page)).slice(1)).get(key);

/** Waits until a reading of the page is as wanted, or says what it was. */
async function until(page, read, wanted, what) {
  const end = Date.now() + PATIENCE_MS;
  let got = await read();
  while (got !== wanted && Date.now() < end) {
    await page.waitForTimeout(50);
    got = await read();
  }
  assert.equal(got, wanted, what);
}

/** Types into a field as a person does, and leaves it. */
async function enter(page, field, text) {
  await page.fill(field, text);
  await page.keyboard.press('Tab');
}

const slider = (page, handle) => async () => Number(await page.getAttribute(handle, 'aria-valuenow'));

/** Started, and the page swapped in. */
async function working(page) {
  await ready(page);
  await page.locator(DIAMETER).waitFor();
  return page;
}

scenario('typed sizes change verdict, drawing, cutoffs and address at once', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  await enter(page, DIAMETER, '100,5');
  assert.match(await page.textContent('#verdict-headline'), /modes/i);
  assert.equal(await inFragment(page, 'd'), '100.5');
  // 229.485 GHz mm over 90 mm: TM01 enters at 2550 MHz (A&S 1964, table 9.5, and c).
  await enter(page, DIAMETER, '90');
  assert.match(await page.textContent('.pic-ladder, [class*=ladder]'), /TM01[^T]*2550/);
  // 3 9/16 in is 90.488 mm.
  await enter(page, DIAMETER, '3 9/16 in');
  assert.equal(await inFragment(page, 'd'), '90.488');
  await page.check('#unit input[value=in]');
  assert.match(await page.textContent('#can .sum'), /in/);
  assert.ok(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth), 'no sideways scroll');
  await checkQuiet(page);
});

scenario('a bad entry is said beside its field, and the last good picture stays', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  await enter(page, DIAMETER, '90');
  const before = await fragment(page);
  for (const text of ['9x', '1,234.5', '-3', '9000', '']) {
    await page.fill(DIAMETER, text);
    assert.equal(await page.getAttribute(DIAMETER, 'aria-invalid'), 'true', text);
    assert.ok((await page.textContent(`${DIAMETER}-message`)).length > 10, `a message for "${text}"`);
    assert.equal(await page.inputValue(DIAMETER), text, 'what was typed stays');
    assert.equal(await fragment(page), before, 'the design stays');
  }
  assert.match(await page.getAttribute('.work', 'class'), /stale/);
  await checkAxe(page);
  await enter(page, DIAMETER, '91');
  assert.equal(await page.getAttribute(DIAMETER, 'aria-invalid'), 'false');
  assert.doesNotMatch(await page.getAttribute('.work', 'class'), /stale/);
});

scenario('the probe is dragged by pointer and moved by keys', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  const [length, distance] = [slider(page, TIP), slider(page, BODY)];
  assert.deepEqual([await length(), await distance()], [28.4, 45]);
  await page.locator(TIP).scrollIntoViewIfNeeded();
  const tip = await page.locator(TIP).boundingBox();
  assert.ok(tip.width >= 44 && tip.height >= 24, `big enough to touch: ${tip.width} by ${tip.height}`);
  const [x, y] = [tip.x + tip.width / 2, tip.y + tip.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x, y - 6, { steps: 4 });
  await page.mouse.move(x, y - 12, { steps: 4 });
  await page.mouse.up();
  const dragged = await length();
  assert.ok(dragged > 29, `the wire grew to ${dragged}`);
  await until(page, async () => Number(await inFragment(page, 'pl')), dragged, 'the address follows');
  await page.focus(TIP);
  await page.keyboard.press('ArrowUp');
  await until(page, async () => Math.round(Math.abs((await length()) - dragged) * 10), 1, 'an arrow is 0.1 mm');
  await page.focus(BODY);
  await page.keyboard.press('PageUp');
  await until(page, async () => Math.round(Math.abs((await distance()) - 45)), 5, 'a page is 5 mm');
  await page.click('#undo');
  await until(page, distance, 45, 'one undo takes the move back');
  await checkQuiet(page);
});

scenario('undo, redo, back and forward walk the same history', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  const value = () => page.inputValue(DIAMETER);
  await enter(page, DIAMETER, '90');
  await enter(page, DIAMETER, '83');
  await page.click('#undo');
  await until(page, value, '90', 'undo');
  await page.click('#redo');
  await until(page, value, '83', 'redo');
  await page.focus('#undo');
  await page.keyboard.press('Control+z');
  await until(page, value, '90', 'by key');
  await enter(page, DIAMETER, '95');
  await page.goBack();
  await until(page, value, '90', 'back');
  await page.goForward();
  await until(page, value, '95', 'forward');
  await checkQuiet(page);
});

scenario('a shared link opens the same design elsewhere; a visit ends and begins where it was', async (t) => {
  const { url } = await serve(t);
  const context = await profile(t, PHONE);
  const page = await working(await openIn(context, url));
  await enter(page, DIAMETER, '83');
  await enter(page, '#name', 'Orchard <gate> & "pear" 果');
  await until(page, async () => (await inFragment(page, 'n'))?.length > 10, true, 'the name is in the address');
  const link = await page.evaluate(() => location.href);
  const sent = link.slice(link.indexOf('#') + 1);
  assert.ok(sent.length < 200, `${sent.length} characters`);
  assert.match(sent, /^[A-Za-z0-9_.~=&-]+$/, 'forum software leaves it alone');
  const other = await working(await open(t, link, PHONE));
  assert.equal(await other.inputValue(DIAMETER), '83');
  assert.equal(await other.inputValue('#name'), 'Orchard <gate> & "pear" 果');
  await page.reload();
  await working(page);
  assert.equal(await page.inputValue(DIAMETER), '83');
  await page.close();
  const later = await working(await openIn(context, url));
  assert.equal(await later.inputValue(DIAMETER), '83', 'kept between visits');
  await checkQuiet(later);
});

scenario('a hostile or broken link says so and destroys nothing', async (t) => {
  const { url } = await serve(t);
  const context = await profile(t, PHONE);
  const page = await working(await openIn(context, url));
  await enter(page, DIAMETER, '83');
  await until(page, () => inFragment(page, 'd'), '83', 'taken up');
  for (const bad of ['v=1&d=<script>alert(1)</script>', 'v=1&d=9e99', '%%%', `v=1&d=87&n=${'~00'.repeat(3000)}`, 'v=1&d=87&d=88']) {
    const visit = await working(await openIn(context, `${url}#${bad}`));
    await until(visit, async () => (await visit.textContent('#notice')).length > 10, true, `a message for ${bad.slice(0, 40)}`);
    assert.ok((await visit.textContent('#can .sum')).length > 5, 'a sane page');
    assert.equal(await visit.inputValue(DIAMETER), '83', 'what was kept is still there');
    await visit.close();
  }
});

scenario('the best cut is found, used in one step, and as good as it says', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  assert.match(await page.textContent('[data-html=pair-cuts]'), /first touch/);
  await page.mouse.move(20, 20);
  const button = page.locator('[data-do=cut][data-arg=p0]');
  await button.waitFor({ state: 'attached' });
  const stated = Number(/VSWR ([0-9.]+) at worst/.exec(await page.locator('.cut', { has: button }).textContent())[1]);
  await button.click();
  await until(page, async () => {
    const shown = /VSWR ([0-9.]+)/.exec(await page.textContent('#verdict-figures'));
    return Math.abs(Number(shown?.[1]) - stated) <= 0.011;
  }, true, `the verdict's VSWR becomes ${stated}`);
  assert.ok(stated < 1.38, 'better than the example was');
  await page.click('#undo');
  await until(page, slider(page, TIP), 28.4, 'one undo takes it back');
  await checkQuiet(page);
});

scenario('a search that cannot be fetched says so, and comes when it can', async (t) => {
  const { page, mend } = await withoutWorkbench(t, PHONE);
  await working(page);
  await page.mouse.move(20, 20);
  await page.locator('[data-html=length-cuts]', { hasText: 'could not be fetched' }).waitFor();
  assert.equal(await page.locator('[data-hide=length-done]').isVisible(), false, 'nothing seems to go on');
  await mend();
  await page.fill(DIAMETER, '86');
  await page.locator('[data-do=cut][data-arg=l0]').waitFor({ state: 'attached' });
  await page.locator('[data-do=cut][data-arg=p0]').waitFor({ state: 'attached' });
});

scenario('a can left while it is searched for leaves no search behind', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  await page.mouse.move(20, 20);
  const cuts = () => page.textContent('[data-html=pair-cuts]');
  const settled = () =>
    page.waitForFunction(
      () =>
        document.querySelector('[data-hide=pair-done]').hidden &&
        document.querySelector('[data-hide=length-done]').hidden &&
        /^Computed/.test(document.querySelector('[data-text=solving]').textContent),
    );
  await page.locator('[data-do=cut][data-arg=p0]').waitFor({ state: 'attached' });
  await settled();
  const first = await cuts();
  // Away and back, at different moments of the search for the other can.
  for (const pause of [20, 150, 300, 450, 600]) {
    await page.fill(DIAMETER, '84');
    await page.waitForTimeout(pause);
    await page.fill(DIAMETER, '87');
    await settled();
    await until(page, cuts, first, `the cuts are the first can's again, ${pause} ms`);
  }
  // One step after another: what is shown belongs to the last.
  await page.fill(DIAMETER, '80');
  await page.waitForTimeout(300);
  await page.fill(DIAMETER, '81');
  await page.waitForTimeout(2_000);
  await settled();
  const [gain, best] = [await page.textContent('[data-text=gain]'), await cuts()];
  const fresh = await working(await open(t, page.url(), PHONE));
  await fresh.mouse.move(20, 20);
  await until(fresh, () => fresh.textContent('[data-html=pair-cuts]'), best, 'the same cuts as opened afresh');
  await until(fresh, () => fresh.textContent('[data-text=gain]'), gain, 'the same gain');
});
