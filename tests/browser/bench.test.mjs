// The parts that are fetched when they are wanted, as a maker uses them: each
// opens, answers and can be used without a network; a measured file is drawn,
// explained and cut by; a funnel is searched and taken; trade sizes are matched; a
// batch of cans is rolled.

import assert from 'node:assert/strict';
import { readFile } from 'node:fs/promises';
import { PATIENCE_MS, checkAxe, checkQuiet, open, openIn, profile, ready, scenario, serve, withoutWorkbench } from './page.mjs';

const PHONE = { width: 360, height: 740 };
const PARTS = ['horn', 'fit', 'measure', 'spread', 'plan'];

async function working(page) {
  await ready(page);
  await page.locator('#print-form').waitFor();
  return page;
}

/** Unfolds a part and waits for its form. */
async function unfold(page, part) {
  await page.click(`#${part} > details > summary`);
  await page.locator(`#${part} form`).waitFor();
}

const place = (part, name) => `#${part} [data-place=${name}]`;

/** Waits until a place of a part says something like this. */
async function says(page, part, name, pattern) {
  await page.waitForFunction(
    ([selector, source]) => new RegExp(source).test(document.querySelector(selector)?.textContent ?? ''),
    [place(part, name), pattern.source],
    { timeout: PATIENCE_MS },
  );
  return page.textContent(place(part, name));
}

const hashOf = (page, key) =>
  page.evaluate((name) => new URLSearchParams(location.hash.slice(1)).get(name), key);

for (const colorScheme of ['light', 'dark']) {
  scenario(`every part opens and breaks no rule of accessibility, ${colorScheme}`, async (t) => {
    const { url } = await serve(t);
    const page = await working(await open(t, url, { ...PHONE, colorScheme }));
    for (const part of PARTS) {
      const before = await page.textContent(place(part, 'sum'));
      await unfold(page, part);
      // What the part comes to stands in its folded line; no measurement has come yet.
      if (part !== 'measure') {
        await page.waitForFunction(
          ([selector, text]) => document.querySelector(selector).textContent !== text,
          [place(part, 'sum'), before],
          { timeout: PATIENCE_MS },
        );
      }
    }
    await page.waitForTimeout(1_000);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
    assert.equal(wide, false, 'nothing is wider than the phone');
    await checkAxe(page);
    await checkQuiet(page);
  });
}

scenario('the parts change the looks of nothing outside them', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  await page.mouse.move(20, 20);
  await page.waitForFunction(() => /^Computed/.test(document.querySelector('[data-text=solving]').textContent));
  await page.waitForTimeout(1_000);
  const looks = () =>
    page.evaluate(() => {
      const outside = [...document.querySelectorAll('#drawing *, #ladder *, #charts *, #pattern *, #print *, #can *')];
      const wanted = ['display', 'fill', 'stroke', 'stroke-width', 'font-size', 'padding', 'max-width', 'border', 'gap'];
      return outside.map((element) => {
        const style = getComputedStyle(element);
        const name = `${element.tagName} ${element.id} ${element.getAttribute('class') ?? ''}`;
        return [name, ...wanted.map((property) => style.getPropertyValue(property))].join(' | ');
      });
    });
  const before = await looks();
  assert.ok(before.length > 200, `${before.length}`);
  for (const part of PARTS) await unfold(page, part);
  await page.waitForTimeout(1_000);
  assert.deepEqual(await looks(), before);
});

scenario('a measured file is drawn beside the design, explained, and cut by', async (t) => {
  const { url } = await serve(t);
  const context = await profile(t, PHONE);
  const page = await working(await openIn(context, url));
  await unfold(page, 'measure');
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.click('#measure [data-act=export]'),
  ]);
  assert.equal(file.suggestedFilename(), 'predicted.s1p');
  // Simulated: what is predicted for a wire of 28.4 mm, against a drawing of 27.2 mm.
  await page.fill('#probe-length', '27.2');
  await page.keyboard.press('Tab');
  await page.setInputFiles('#measure-choose', { name: 'can.s1p', mimeType: 'text/plain', buffer: await readFile(await file.path()) });
  const told = await says(page, 'measure', 'conclusion', /wire length differs from the drawing by \+1\.[0-4] mm/);
  assert.match(told, /One cause/);
  await says(page, 'measure', 'advice', /Cut only 0\.\d mm now/);
  assert.match(await page.textContent('.match-chart .pic-key-ghost'), /measured/);

  await page.click('#measure [data-act=did-cut]');
  await says(page, 'measure', 'log-lines', /then cut 0\.\d mm off/);
  const cut = Number(await page.inputValue('#probe-length'));
  assert.ok(cut < 27.2 && cut > 26, `${cut}`);
  await says(page, 'measure', 'measured-notes', /Measure again/);
  assert.match(await page.textContent('.match-chart .pic-key-ghost'), /best cut/);

  // What is wrong with a file is said beside it, with its line.
  await page.fill('#measure-file', '# MHz S RI R 50\n2400 0.1 x');
  await page.locator('#measure-file-message', { hasText: 'Line 2:' }).waitFor();
  await page.fill('#measure-file', '');
  await page.click('#undo');
  assert.equal(Number(await page.inputValue('#probe-length')), 27.2);
  await page.reload();
  await working(page);
  await unfold(page, 'measure');
  await says(page, 'measure', 'log-lines', /then cut 0\.\d mm off/);
  await checkQuiet(page);
});

scenario('a file may be dropped, and a table or one point typed', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  await unfold(page, 'measure');
  await page.evaluate(() => {
    const data = new DataTransfer();
    const rows = Array.from({ length: 60 }, (_, i) => `${2350 + 3 * i} ${0.1 + i / 1000} 0.05`);
    data.items.add(new File([`# MHz S RI R 50\n${rows.join('\n')}\n`], 'dropped.s1p'));
    const place = document.querySelector('#measure [data-drop=file]');
    place.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
  });
  await says(page, 'measure', 'compare-rows', /VSWR/);
  assert.match(await page.inputValue('#measure-file'), /^# MHz/);
  await page.check('#measure input[name=source][value=table]');
  await page.fill('#measure-table', '2400 1,8\n2440 1,5\n2480 1,7');
  await says(page, 'measure', 'compare-rows', /2440/);
  await page.check('#measure input[name=source][value=best]');
  await page.fill('#measure-best', '2390');
  await page.fill('#measure-vswr', '1.6');
  await says(page, 'measure', 'compare-rows', /2390/);
  await checkAxe(page);
  await checkQuiet(page);
});

scenario('a measurement is explained within its time', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url));
  await unfold(page, 'measure');
  const [file] = await Promise.all([
    page.waitForEvent('download'),
    page.click('#measure [data-act=export]'),
  ]);
  const text = await readFile(await file.path(), 'utf8');
  // 201 points: each pair of neighbours has a mean between them.
  const lines = text.trim().split('\n').slice(2).map((line) => line.split(' ').map(Number));
  const dense = lines.flatMap((line, i) => (i ? [line.map((v, k) => (v + lines[i - 1][k]) / 2), line] : [line]));
  assert.equal(dense.length, 201);
  const data = ['# Hz S RI R 50', ...dense.map((line) => line.join(' '))].join('\n');
  const times = [];
  for (const length of ['27.5', '29.1', '27.8']) {
    await page.fill('#measure-file', '');
    await page.fill('#probe-length', length);
    await page.waitForTimeout(700);
    times.push(
      await page.evaluate(async (whole) => {
        const field = document.querySelector('#measure-file');
        const shown = document.querySelector('#measure [data-place=conclusion]');
        shown.textContent = '';
        shown.shown = '';
        field.value = whole;
        const begun = performance.now();
        field.dispatchEvent(new InputEvent('input', { bubbles: true }));
        while (!shown.textContent && performance.now() - begun < 20_000) {
          await new Promise((done) => requestAnimationFrame(done));
        }
        return performance.now() - begun;
      }, data),
    );
  }
  console.log(`201 points explained and shown: ${times.map((ms) => ms.toFixed(0)).join(', ')} ms`);
  // The aim is 300 ms; twice that is for busy machines.
  assert.ok(Math.min(...times) <= 600, `${times}`);
});

scenario('the best funnel is searched, taken into the design, and taken back', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  await unfold(page, 'horn');
  await page.fill('#horn-mouth', '160');
  await page.click('#horn [data-act=funnel]');
  await page.locator('#horn [data-busy]').first().waitFor({ state: 'hidden' });
  await page.click('#horn [data-place=funnel-take] button');
  await page.waitForFunction(() => /mo=funnel/.test(location.hash));
  await page.click('#undo');
  await page.waitForFunction(() => !/mo=funnel/.test(location.hash));
  await checkQuiet(page);
});

scenario('trade sizes are matched, one is used with its cut, and taken back', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  await unfold(page, 'fit');
  await page.waitForFunction(
    () => /\d/.test(document.querySelector('#fit tbody')?.textContent) && !document.querySelector('#fit tbody').textContent.includes('\u2026'),
  );
  const rows = await page.locator('#fit tbody tr').evaluateAll((all) =>
    all.map((row) => [...row.cells].map((cell) => cell.textContent.replace(' Use', ''))),
  );
  assert.ok(rows.length > 5, `${rows.length}`);
  for (const [name, , , vswr] of rows) assert.match(vswr, /^(\d\.\d\d|over 10|no match)$/, name);
  const [, inside, , vswr] = rows[0];
  await page.click('#fit tbody tr:first-child button');
  await page.waitForFunction((mm) => new URLSearchParams(location.hash.slice(1)).get('d') === mm, String(Number.parseFloat(inside)));
  await page.waitForFunction(() => /^Computed/.test(document.querySelector('[data-text=solving]').textContent));
  const shown = await page.textContent('[data-text=vswr-worst]');
  assert.ok(Math.abs(Number.parseFloat(shown) - Number(vswr)) < 0.03, `${shown} for ${vswr}`);
  await page.click('#undo');
  await page.waitForFunction(() => new URLSearchParams(location.hash.slice(1)).get('d') === '87');
  await checkQuiet(page);
});

scenario('the reasons behind a figure come when they are asked for', async (t) => {
  const { page, mend } = await withoutWorkbench(t, PHONE);
  await working(page);
  const why = page.locator('#match [data-why=impedance] details.why').first();
  await why.locator('summary').click();
  await why.getByText('could not be fetched').waitFor();
  await mend();
  await why.locator('summary').click();
  await why.locator('summary').click();
  await why.getByText('How sure').waitFor();
  assert.match(await why.innerText(), /Galerkin/);
  await checkAxe(page);
});

scenario('2,000 cans are drawn within their time, and screws are searched, put in and taken back', async (t) => {
  const { url } = await serve(t);
  const page = await working(await open(t, url, PHONE));
  await unfold(page, 'spread');
  await says(page, 'spread', 'yield-says', /So far \d+ of 2000/);
  const begun = Date.now();
  await page.click('#spread [data-act=yield]');
  const result = await says(page, 'spread', 'yield-results', /Cans simulated\s*2000/);
  const took = Date.now() - begun;
  console.log(`2,000 cans: ${took} ms`);
  // The aim is 2 s; twice that is for busy machines.
  assert.ok(took <= 4_000, `${took} ms`);
  const share = Number(/passes VSWR 1\.5\s*([\d.]+) %/.exec(result)[1]);
  assert.ok(share > 60 && share < 100, `${share} %`);
  // The same seed draws the same cans.
  await page.fill('#spread-seed', '2');
  await page.fill('#spread-seed', '1');
  await page.click('#spread [data-act=yield]');
  await page.waitForTimeout(200);
  assert.equal(await says(page, 'spread', 'yield-results', /Cans simulated\s*2000/), result);

  await page.click('#spread [data-act=screws]');
  await says(page, 'spread', 'screws-results', /VSWR/);
  await page.locator('#spread [data-act=take-screws]').click();
  await page.waitForFunction(() => /[&#]t=/.test(location.hash));
  await page.click('#undo');
  await page.waitForFunction(() => !/[&#]t=/.test(location.hash));
  await checkQuiet(page);
});

scenario('a link is planned: margin, path, law only when rules are chosen', async (t) => {
  const { url } = await serve(t);
  const context = await profile(t, PHONE);
  const page = await working(await openIn(context, url));
  await unfold(page, 'plan');
  // ITU-R P.525: 300 m at 2442.25 MHz lose 89.7 dB.
  await says(page, 'plan', 'waterfall', /89\.7/);
  assert.match(await page.textContent(place('plan', 'lawful')), /nothing is said of what is lawful/);
  const margin = async () => Number(/margin ([\d.]+) dB/.exec(await page.textContent(place('plan', 'sum')))[1]);
  const near = await margin();
  await page.fill('#plan-distance', '600');
  await says(page, 'plan', 'sum', /at 600 m/);
  // Twice the distance costs 6 dB.
  assert.ok(Math.abs(near - (await margin()) - 6) <= 1, `${near} then ${await margin()}`);
  // The far end may be a design that was kept: a funnel adds to the margin.
  const plain = await margin();
  await page.selectOption('#mouth', 'funnel');
  await page.fill('#mouth-diameter', '160');
  await page.fill('#name', 'South mast');
  await page.click('[data-do=keep]');
  await page.selectOption('#mouth', 'open');
  await page.selectOption('#plan-far', 'link');
  await page.focus('#plan-far-kept');
  await page.selectOption('#plan-far-kept', { label: 'South mast' });
  await page.waitForFunction(
    ([selector, least]) => Number(/margin ([\d.]+) dB/.exec(document.querySelector(selector).textContent)?.[1]) > least,
    [place('plan', 'sum'), plain + 2],
  );
  await page.selectOption('#plan-far', { index: 0 });
  await page.selectOption('#plan-rules', { index: 1 });
  await says(page, 'plan', 'lawful', /47 CFR/);
  await page.fill('#plan-obstacles', '100 x');
  await page.locator('#plan-obstacles-message', { hasText: 'Line 1' }).waitFor();
  // Entries are there at the next visit; the design's own change is followed.
  await page.fill('#plan-obstacles', '');
  await page.reload();
  await working(page);
  await unfold(page, 'plan');
  await says(page, 'plan', 'sum', /at 600 m/);
  const before = await page.textContent(place('plan', 'aim-table'));
  await page.fill('#inside-diameter', '92');
  await page.waitForFunction(
    ([selector, text]) => document.querySelector(selector).textContent !== text,
    [place('plan', 'aim-table'), before],
  );
  await checkQuiet(page);
});

scenario('every part works without a network', async (t) => {
  const server = await serve(t);
  const context = await profile(t, PHONE);
  const page = await working(await openIn(context, server.url));
  await page.locator('#offline-note').waitFor(); // Says so once all is kept.
  await server.stop();
  await context.setOffline(true);
  await page.reload();
  await working(page);
  for (const part of PARTS) await unfold(page, part);
  await says(page, 'horn', 'gain-says', /dBi/);
  await says(page, 'fit', 'rows', /1\.\d\d/);
  await page.locator('[data-do=cut][data-arg=p0]').waitFor({ state: 'attached' });
  const why = page.locator('#can [data-why=cutoff] details.why').first();
  await why.locator('summary').press('Enter');
  await why.getByText('How sure').waitFor();
  await checkQuiet(page);
});

scenario('a part that cannot be fetched says so, and comes when it can', async (t) => {
  const { page, mend } = await withoutWorkbench(t, PHONE);
  await working(page);
  await page.click('#plan > details > summary');
  await page.locator('#plan .part-body', { hasText: 'could not be fetched' }).waitFor();
  await mend();
  await page.click('#plan > details > summary');
  await unfold(page, 'plan');
  await says(page, 'plan', 'sum', /margin/);
});
