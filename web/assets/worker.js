// Solves for the field outside a can in a thread of its own, one frequency at a
// time; a newer job takes the place of the one in hand.
//   in:  [job, link of the design]; an empty link only stops
//   out: [job, done, total], at the end with the solution's numbers; total 0: can't be solved

import start, { outside_begin, outside_step, outside_finish } from './{{app}}';

const started = start({ module_or_path: new URL('./{{wasm}}', import.meta.url) });
const pause = () => new Promise((done) => setTimeout(done));
let latest = 0;

onmessage = async ({ data: [job, link] }) => {
  latest = job;
  await started;
  if (!link || latest !== job) return;
  const total = outside_begin(link);
  for (let done = 0; done < total; done++) {
    await pause(); // Lets a newer job be heard.
    if (latest !== job) return;
    outside_step();
    postMessage([job, done + 1, total]);
  }
  const numbers = outside_finish();
  postMessage(numbers.length > 0 ? [job, total, total, numbers] : [job, 0, 0]);
};
