// The thread in which the long work is done. The program hears what the page says and
// takes one step at a time; what it tells goes to the page. All are bytes of
// `tinwave-protocol`.

import start, { hear, step } from './{{worker_program}}';

/** What comes before the program is ready; none once it is. */
let early = [];
let working = false;

// Back to the event loop between two steps, so that a Stop is heard: by a message,
// because a promise lets nothing else in and a timer is held back.
const bell = new MessageChannel();
const next = () => bell.port2.postMessage(0);
bell.port1.onmessage = () => {
  const told = step();
  working = told !== undefined;
  if (!working) return;
  postMessage(told, [told.buffer]);
  next();
};

function take(message) {
  hear(message);
  if (working) return;
  working = true;
  next();
}

onmessage = ({ data }) => {
  if (early) early.push(data);
  else take(data);
};

start({ module_or_path: new URL('./{{worker_wasm}}', import.meta.url) }).then(
  () => {
    const waiting = early;
    early = undefined;
    for (const message of waiting) take(message);
  },
  (error) => {
    // The page hears of what is thrown, not of a promise that was refused.
    setTimeout(() => {
      throw error;
    });
  },
);
