// What the page weighs, by a compressor other than the build's own. The bars and which
// files are fetched later are the build's to say.

import assert from 'node:assert/strict';
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { FIRST, LATER, open, ready, scenario, serve } from './page.mjs';

const FIRST_BAR = Number(process.env.TINWAVE_FIRST_BAR);
const LATER_BAR = Number(process.env.TINWAVE_LATER_BAR);

scenario('a first visit, and what is fetched later, are within their bars', async () => {
  const names = await readdir(FIRST);
  assert.ok(LATER.every((name) => names.includes(name)), `${LATER}`);
  const weigh = async (name) => gzipSync(await readFile(join(FIRST, name)), { level: 9 }).length;
  const sum = async (list) => (await Promise.all(list.map(weigh))).reduce((total, size) => total + size, 0);
  const first = await sum(names.filter((name) => !LATER.includes(name)));
  const later = await sum(LATER);
  console.log(`gzip: ${first} bytes on a first visit, ${later} later`);
  assert.ok(first > 10_000 && first <= FIRST_BAR, `${first} of ${FIRST_BAR}`);
  assert.ok(later > 10_000 && later <= LATER_BAR, `${later} of ${LATER_BAR}`);
});

scenario('a first visit transfers no more than that, and nothing of the rest', async (t) => {
  const { url } = await serve(t);
  const page = await open(t, 'about:blank', { serviceWorkers: 'block' });
  const asked = [];
  page.context().on('request', (request) => asked.push(new URL(request.url()).pathname.slice(1)));
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  let transferred = 0;
  session.on('Network.loadingFinished', ({ encodedDataLength }) => {
    transferred += encodedDataLength;
  });
  await page.goto(url);
  await ready(page);
  await page.waitForTimeout(2000); // What the program might ask for by itself.
  console.log(`transferred until the program runs: ${transferred} bytes, headers included`);
  assert.ok(transferred > 10_000 && transferred <= FIRST_BAR, `${transferred}`);
  assert.deepEqual(asked.filter((name) => LATER.includes(name)), []);
});
