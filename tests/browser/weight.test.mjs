// What a first visit weighs, by a compressor other than the build's own.

import assert from 'node:assert/strict';
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { FIRST, open, ready, scenario, serve } from './page.mjs';

// Ceilings that may only come down: the aims are 245,000 and 205,000. Printing is
// fetched when it is asked for, and counts apart.
const TOTAL_BAR = 265_000;
const WASM_BAR = 240_000;
const PRINT_BAR = 45_000;

scenario('all files together, and the program, are within their bars', async () => {
  const names = await readdir(FIRST);
  const sizes = await Promise.all(
    names.map(async (name) => [name, gzipSync(await readFile(join(FIRST, name)), { level: 9 }).length]),
  );
  const sum = (list) => list.reduce((total, [, size]) => total + size, 0);
  const first = sizes.filter(([name]) => !name.startsWith('print'));
  const wasm = sum(first.filter(([name]) => name.endsWith('.wasm')));
  const total = sum(first);
  const print = sum(sizes) - total;
  console.log(`gzip: ${total} bytes in ${names.length} files, ${wasm} of them the program`);
  assert.ok(wasm > 0 && wasm <= WASM_BAR, `${wasm}`);
  assert.ok(total <= TOTAL_BAR, `${total}`);
  assert.ok(print > 0 && print <= PRINT_BAR, `printing ${print}`);
});

scenario('a first visit transfers no more than that', async (t) => {
  const { url } = await serve(t);
  const page = await open(t, 'about:blank', { serviceWorkers: 'block' });
  const session = await page.context().newCDPSession(page);
  await session.send('Network.enable');
  let transferred = 0;
  session.on('Network.loadingFinished', ({ encodedDataLength }) => {
    transferred += encodedDataLength;
  });
  await page.goto(url);
  await ready(page);
  console.log(`transferred until the program runs: ${transferred} bytes, headers included`);
  assert.ok(transferred > 10_000 && transferred <= TOTAL_BAR, `${transferred}`);
});
