// Printing from the page: files and sheets at true scale, fetched when they are
// asked for, and there without a network.

import assert from 'node:assert/strict';
import { execFile } from 'node:child_process';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { allKept, atStation, checkQuiet, open, ready, scenario, scratch, serve, settled } from './page.mjs';

async function started(t, url, options = {}) {
  const page = await ready(await open(t, url, { width: 360, height: 740, acceptDownloads: true, ...options }));
  await atStation(page, url, 'make', 'b=2400-2483.5&d=87&l=190&w=0.2&r=4&pw=1.29&pl=31.25&pd=69.81');
  await settled(page);
  await page.getByRole('button', { name: 'Save PDF' }).and(page.locator(':enabled')).waitFor();
  return page;
}

const BUTTONS = { pdf: 'Save PDF', svg: /SVG/, dxf: /DXF/ };

async function saved(page, kind) {
  const [download] = await Promise.all([
    page.waitForEvent('download'),
    page.getByRole('button', { name: BUTTONS[kind] }).click(),
  ]);
  return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
}

scenario('files of every kind, under the name of the design', async (t) => {
  const { url } = await serve(t);
  const page = await started(t, url);
  // A name in another script, with markup in it: 果园 (north) <gate>.
  await page.goto(`${url}#v=1&at=make&u=best&n=~kgs.~h65._~14.north~15._~1o.gate~1q.&b=2400-2483.5&d=87&l=190&pw=1.29&pl=31.25&pd=69.81`);
  await settled(page);
  await page.getByRole('button', { name: 'Save PDF' }).and(page.locator(':enabled')).waitFor();
  const pdf = await saved(page, 'pdf');
  assert.equal(pdf.name, '\u679c\u56ed-north-gate.pdf');
  const text = pdf.bytes.toString('latin1');
  assert.match(text, /^%PDF-1\.\d/);
  // A4 is 210 by 297 mm (ISO 216): 595.28 by 841.89 points of 1/72 in.
  assert.match(text, /MediaBox ?\[ ?0 0 595\.2\d* 841\.8\d* ?\]/);
  assert.match(text, /PrintScaling ?\/None/);
  assert.match((await saved(page, 'svg')).bytes.toString('utf8'), /<svg[^>]*width="[\d.]+mm"/);
  assert.match((await saved(page, 'dxf')).bytes.toString('latin1'), /SECTION/);
  await page.getByLabel('Paper', { exact: true }).selectOption('letter');
  const letter = (await saved(page, 'pdf')).bytes.toString('latin1');
  // Letter is 8.5 by 11 in (ANSI/ASME Y14.1).
  assert.match(letter, /MediaBox ?\[ ?0 0 612(\.0*)? 792(\.0*)? ?\]/);
  await checkQuiet(page);
});

scenario('a ruler that cannot be is refused beside its entry', async (t) => {
  const { url } = await serve(t);
  const page = await started(t, url);
  await page.getByText('My printer').first().click();
  const across = page.getByRole('textbox', { name: /across/i }).first();
  await across.fill('5');
  await across.press('Enter');
  await page.getByText(/90\.0 to 110\.0 mm/).first().waitFor();
  await across.fill('98');
  await across.press('Enter');
  const pdf = await saved(page, 'pdf');
  assert.match(pdf.bytes.toString('latin1'), /^%PDF/);
});

scenario('the browser prints the sheets alone, at true scale', async (t) => {
  const { url } = await serve(t);
  const page = await started(t, url);
  await page.evaluate(() => {
    window.print = () => document.documentElement.setAttribute('data-printed', '');
  });
  await page.getByRole('button', { name: 'Print', exact: true }).click();
  await page.locator('html[data-printed]').waitFor({ state: 'attached' });
  await page.emulateMedia({ media: 'print' });
  const sheets = await page.$$eval('.paper-sheet > svg', (list) =>
    list.map((sheet) => {
      const { width, height } = sheet.getBoundingClientRect();
      return [width, height];
    }),
  );
  assert.ok(sheets.length >= 3, `${sheets.length} sheets`);
  for (const [width, height] of sheets) {
    // CSS: 96 px to the inch of 25.4 mm. Within 0.1 mm.
    assert.ok(Math.abs((Math.min(width, height) / 96) * 25.4 - 210) < 0.1, `${width} px wide`);
    assert.ok(Math.abs((Math.max(width, height) / 96) * 25.4 - 297) < 0.1, `${height} px high`);
  }
  assert.equal(await page.locator('main').isVisible(), false, 'nothing else is printed');
  await page.evaluate(() => dispatchEvent(new Event('afterprint')));
  await page.waitForFunction(() => document.querySelectorAll('.paper-sheet').length === 0);
});

scenario('printing works without a network', async (t) => {
  const { url, stop } = await serve(t);
  const page = await started(t, url);
  await allKept(page);
  await stop();
  await page.reload();
  await ready(page);
  await settled(page);
  await page.getByRole('button', { name: 'Save PDF' }).and(page.locator(':enabled')).waitFor();
  assert.match((await saved(page, 'pdf')).bytes.toString('latin1'), /^%PDF/);
});

scenario('printing the page from any station gives the build sheet', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url, { width: 1366, height: 850 }));
  for (const station of ['can', 'beam']) {
    await atStation(page, url, station, 'b=2400-2483.5&d=87&l=190&w=0.2&r=4&pw=1.29&pl=31.25&pd=69.81');
    await settled(page);
    await page.emulateMedia({ media: 'print' });
    assert.equal(await page.locator('main').isVisible(), false, station);
    const sheet = page.locator('.build-sheet');
    assert.ok(await sheet.isVisible(), station);
    // The cut that the address has, which follows within half a second of an idle machine:
    // from the closed end's rim, past the wall and its rim of 4 mm.
    const sheetAgrees = () => {
      const distance = Number(new URLSearchParams(location.hash.slice(1)).get('pd'));
      const text = document.querySelector('.build-sheet').innerText;
      const drilled = Number(/Middle of the hole\s+(\d+\.\d)\s/.exec(text)?.[1]);
      return distance > 40 && Math.abs(drilled - (distance + 0.2 + 4)) < 0.051;
    };
    await page.waitForFunction(sheetAgrees, null, { timeout: 10_000 });
    await page.emulateMedia({ media: 'screen' });
  }
});

const DOTS = 600;
const mm = (pixels) => (pixels / DOTS) * 25.4;

/** The straight lines on each page of a PDF, upright and level, in millimetres. */
async function linesOf(t, bytes) {
  const folder = await scratch(t);
  await writeFile(join(folder, 'it.pdf'), bytes);
  await promisify(execFile)(process.env.TINWAVE_PDFTOPPM, ['-gray', '-r', `${DOTS}`, join(folder, 'it.pdf'), join(folder, 'page')]);
  const pages = (await readdir(folder)).filter((name) => name.endsWith('.pgm')).sort();
  const found = [];
  for (const name of pages) found.push(linesIn(await readFile(join(folder, name))));
  return found;
}

/** Of a grey picture (PGM, binary). */
function linesIn(picture) {
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(picture.subarray(0, 40).toString('latin1'));
  const [width, height] = [Number(head[1]), Number(head[2])];
  const grey = picture.subarray(head[0].length);
  const [upright, level] = [new Uint32Array(width), new Uint32Array(height)];
  const runs = new Uint32Array(width);
  for (let y = 0; y < height; y++) {
    let run = 0;
    for (let x = 0; x < width; x++) {
      const dark = grey[y * width + x] < 128;
      run = dark ? run + 1 : 0;
      runs[x] = dark ? runs[x] + 1 : 0;
      if (run > level[y]) level[y] = run;
      if (runs[x] > upright[x]) upright[x] = runs[x];
    }
  }
  return { upright: middles(upright), level: middles(level) };
}

/** Where ink runs straight for 8 mm or more: the middles of neighbouring places. */
function middles(longest) {
  const places = [];
  let first = -1;
  for (let i = 0; i <= longest.length; i++) {
    const line = mm(longest[i] ?? 0) >= 8;
    if (line && first < 0) first = i;
    if (!line && first >= 0) {
      places.push(mm((first + i - 1) / 2));
      first = -1;
    }
  }
  return places;
}

scenario('what the browser prints has its lines within 0.1 mm of the measured PDF', async (t) => {
  const { url } = await serve(t);
  const page = await started(t, url);
  const file = await saved(page, 'pdf');
  await page.evaluate(() => {
    window.print = () => document.documentElement.setAttribute('data-printed', '');
  });
  await page.getByRole('button', { name: 'Print', exact: true }).click();
  await page.locator('html[data-printed]').waitFor({ state: 'attached' });
  const printed = await page.pdf({ preferCSSPageSize: true, printBackground: true });
  const [wanted, got] = [await linesOf(t, file.bytes), await linesOf(t, printed)];
  assert.ok(wanted.length >= 3, `${wanted.length} sheets`);
  assert.equal(got.length, wanted.length);
  let compared = 0;
  for (const [i, sheet] of wanted.entries()) {
    for (const [kind, places] of Object.entries(sheet)) {
      assert.equal(got[i][kind].length, places.length, `sheet ${i + 1}, ${kind}: ${got[i][kind]} for ${places}`);
      for (const [k, place] of places.entries()) {
        const off = got[i][kind][k] - place;
        assert.ok(Math.abs(off) <= 0.1, `sheet ${i + 1}, ${kind} ${place} mm is off by ${off} mm`);
        compared += 1;
      }
    }
  }
  // Rulers, the strip's edges, the connector's outline.
  assert.ok(compared >= 20, `${compared} lines`);
});
