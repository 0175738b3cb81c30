// What a first visit weighs, by a compressor other than the build's own.

import assert from 'node:assert/strict';
import { readFile, readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { FIRST, open, ready, scenario, serve } from './page.mjs';

// Ceilings that may only come down. What is fetched when it is wanted counts apart.
// A compiler's own library, built for speed, is allowed more.
const allowed = (bar) => bar * (1 + Number(process.env.TINWAVE_ALLOWED_PERCENT) / 100);
const TOTAL_BAR = allowed(215_000);
const WASM_BAR = allowed(188_500);
const FETCHED = { print: allowed(45_000), bench: allowed(325_000) };

scenario('all files together, and the program, are within their bars', async () => {
  const names = await readdir(FIRST);
  const sizes = await Promise.all(
    names.map(async (name) => [name, gzipSync(await readFile(join(FIRST, name)), { level: 9 }).length]),
  );
  const sum = (list) => list.reduce((total, [, size]) => total + size, 0);
  const fetched = Object.keys(FETCHED);
  const first = sizes.filter(([name]) => !fetched.some((prefix) => name.startsWith(prefix)));
  const wasm = sum(first.filter(([name]) => name.endsWith('.wasm')));
  const total = sum(first);
  console.log(`gzip: ${total} bytes in ${names.length} files, ${wasm} of them the program`);
  assert.ok(wasm > 0 && wasm <= WASM_BAR, `${wasm}`);
  assert.ok(total <= TOTAL_BAR, `${total}`);
  for (const [prefix, bar] of Object.entries(FETCHED)) {
    const weight = sum(sizes.filter(([name]) => name.startsWith(prefix)));
    console.log(`${prefix}, fetched when it is wanted: ${weight} bytes`);
    assert.ok(weight > 0 && weight <= bar, `${prefix} ${weight}`);
  }
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
