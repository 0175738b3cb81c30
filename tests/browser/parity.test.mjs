// The worker gives the same bits in the browser as on the host, and in time: both are
// held against `web/worker/tests/digests.txt`, which the host's test writes.

import assert from 'node:assert/strict';
import { FOR_WORK, open, ready, scenario, serve } from './page.mjs';

/** Kind of question, link of its design, its bytes, digest of what is told at the end. */
const QUESTIONS = process.env.TINWAVE_QUESTIONS.trim()
  .split('\n')
  .map((line) => line.split(' '))
  .map(([kind, link, bytes, digest]) => ({ kind, link, bytes, digest }));

/** A page, and a way to ask a fresh program: what each question's last answer is, and how long it took. */
async function asking(t) {
  const { url } = await serve(t);
  const page = await ready(await open(t, url));
  const at = (ending) => new URL(FOR_WORK.find((name) => name.includes('program') && name.endsWith(ending)), url).href;
  let programs = 0;
  return (questions) =>
    page.evaluate(
      async ({ script, wasm, questions }) => {
        const { default: start, hear, step } = await import(script);
        await start({ module_or_path: wasm });
        return questions.map((hex) => {
          const begun = performance.now();
          hear(Uint8Array.from(hex.match(/../g), (digits) => Number.parseInt(digits, 16)));
          let steps = 0;
          let last;
          for (let told = step(); told; told = step()) {
            last = told;
            steps++;
          }
          const time = performance.now() - begun;
          // FNV-1a of 64 bits.
          let hash = 0xcbf29ce484222325n;
          for (const byte of last) hash = BigInt.asUintN(64, (hash ^ BigInt(byte)) * 0x100000001b3n);
          return { digest: hash.toString(16).padStart(16, '0'), steps, time };
        });
      },
      { script: `${at('.js')}?${programs++}`, wasm: at('.wasm'), questions },
    );
}

scenario('the worker tells the same of a can in wasm as natively, to the bit', async (t) => {
  const ask = await asking(t);
  assert.ok(QUESTIONS.length >= 6);
  const found = await ask(QUESTIONS.map(({ bytes }) => bytes));
  for (const [i, { kind, link, digest }] of QUESTIONS.entries()) {
    assert.equal(found[i].digest, digest, `${kind} of ${link}`);
  }
});

scenario('a plain can is solved, and its best cut found, within their time', async (t) => {
  const ask = await asking(t);
  const { link } = QUESTIONS[0];
  const questions = ['outside', 'cuts'].map((kind) => QUESTIONS.find((one) => one.kind === kind && one.link === link));
  const times = { outside: [], cuts: [] };
  for (let round = 0; round < 6; round++) {
    // A program keeps what it has solved, so each round has one of its own.
    const [outside, cuts] = await ask(questions.map(({ bytes }) => bytes));
    times.outside.push((outside.time * 5) / outside.steps);
    times.cuts.push(cuts.time);
  }
  const told = (list) => list.map((ms) => ms.toFixed(1)).join(', ');
  console.log(`five frequencies of a plain can: ${told(times.outside)} ms; best pair: ${told(times.cuts)} ms`);
  // The aims are 30 and 60 ms; twice that is for busy machines.
  assert.ok(Math.min(...times.outside) <= 60, told(times.outside));
  assert.ok(Math.min(...times.cuts) <= 120, told(times.cuts));
});
