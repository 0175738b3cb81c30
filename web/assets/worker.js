// The workbench in a thread of its own. It solves for the field outside a can, one
// frequency at a time, searches for the best cuts, and answers for the parts of the
// page that were fetched when they were wanted; a newer job takes the place of the one
// in hand.
//
//   field   in:  ['field', job, link of the design]; an empty link only stops
//           out: ['field', job, done, total], at the end with the numbers; total 0:
//                can't be solved
//   cuts    the same with 'cuts', for the best cuts
//   part    in:  { id, markup | ask: text }, { id, begin: text, part }; { stop: part } drops its job
//           out: { id, text }, of a job { id, done, total, text }, at the end with `ended`

import start, * as bench from './{{bench}}';

const started = start({ module_or_path: new URL('./{{bench_wasm}}', import.meta.url) });
// A message, unlike a timer, is not held back.
const bell = new MessageChannel();
const paused = [];
bell.port1.onmessage = () => paused.shift()();
const pause = () =>
  new Promise((done) => {
    paused.push(done);
    bell.port2.postMessage(0);
  });
/** The newest job of each kind. */
const latest = {};
/** The message that began the job in hand of each part. */
const jobs = new Map();

const KINDS = {
  field: [bench.field_begin, bench.field_step, bench.field_finish],
  cuts: [bench.cuts_begin, bench.cuts_step, bench.cuts_finish],
};

async function solve(kind, number, link) {
  latest[kind] = number;
  if (!link) return;
  const [begin, step, finish] = KINDS[kind];
  const total = begin(link);
  for (let done = 0; done < total; done++) {
    await pause(); // Lets a newer job be heard.
    if (latest[kind] !== number) return;
    step();
    postMessage([kind, number, done + 1, total]);
  }
  const numbers = finish();
  postMessage(numbers.length > 0 ? [kind, number, total, total, numbers] : [kind, number, 0, 0]);
}

async function work(id, text, part) {
  jobs.set(part, id);
  const total = bench.job_begin(text);
  let told = 0;
  for (let done = 0; done < total; done++) {
    await pause();
    if (jobs.get(part) !== id) return;
    const so_far = bench.job_step(part);
    // The page needs no more than it can show.
    if (so_far || performance.now() - told > 40) {
      told = performance.now();
      postMessage({ id, done: done + 1, total, text: so_far });
    }
  }
  postMessage({ id, done: total, total, text: bench.job_finish(part), ended: true });
}

async function answer(data) {
  await started;
  if (Array.isArray(data)) await solve(...data);
  else if (data.markup) postMessage({ id: data.id, text: bench.part_markup(data.markup) });
  else if (data.ask) postMessage({ id: data.id, text: bench.part_answer(data.ask) });
  else if (data.begin) await work(data.id, data.begin, data.part);
  else {
    jobs.delete(data.stop);
    bench.job_drop(data.stop);
  }
}

onmessage = ({ data }) => {
  answer(data).catch((error) => {
    // A program that did not come, or broke, is an error of the worker's: the page
    // hears of what is thrown, not of a promise that was refused.
    setTimeout(() => {
      throw error;
    });
  });
};
