// What the page weighs, by a compressor other than the build's own. The bars and which
// files are fetched later are the build's to say.

import assert from 'node:assert/strict';
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { FIRST, GROUPS, LATER, open, ready, scenario, serve } from './page.mjs';

scenario('a first visit, and each group that is fetched later, is within its bar', async () => {
  const weigh = async (name) => gzipSync(await readFile(join(FIRST, name)), { level: 9 }).length;
  for (const { bar, names } of GROUPS) {
    const sizes = await Promise.all(names.map(weigh));
    const sum = sizes.reduce((total, size) => total + size, 0);
    console.log(`gzip: ${sum} of ${bar} bytes: ${names}`);
    assert.ok(sum > 10_000 && sum <= bar, `${sum} of ${bar}: ${names}`);
  }
  const grouped = GROUPS.flatMap(({ names }) => names);
  assert.deepEqual(grouped.sort(), (await readdir(FIRST)).sort(), 'every file is in one group');
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
  assert.ok(transferred > 10_000 && transferred <= GROUPS[0].bar, `${transferred}`);
  assert.deepEqual(asked.filter((name) => LATER.includes(name)), []);
});
