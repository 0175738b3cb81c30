// Prints: turns the page's job and the choices beside it into a file or sheets.
// Fetched, with the program that draws, only when something is to be printed.

import start, { print } from './{{print}}';

const started = start({ module_or_path: new URL('./{{print_wasm}}', import.meta.url) });

/** A text as the browser's own fonts draw it, 64 px to the em, one bit to a pixel. */
function image(words) {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d');
  pen.font = '64px sans-serif';
  const width = Math.max(1, Math.ceil(pen.measureText(words).width));
  Object.assign(canvas, { width, height: 96 });
  pen.font = '64px sans-serif'; // A new size forgets it.
  pen.fillText(words, 0, 71);
  const { data } = pen.getImageData(0, 0, width, 96);
  let rows = '';
  for (let y = 0; y < 96; y++) {
    for (let x = 0; x < width; x += 8) {
      let byte = 0;
      for (let bit = 0; bit < 8; bit++) {
        if (x + bit < width && data[(y * width + x + bit) * 4 + 3] > 127) byte |= 128 >> bit;
      }
      rows += byte.toString(16).padStart(2, '0');
    }
  }
  return `image=64 71 ${width} 96 ${rows} ${words}\n`;
}

/** The file's bytes; texts that its fonts lack are drawn and handed in, once. */
function drawn(job, kind, again = true) {
  const bytes = print(new TextEncoder().encode(`${kind}\n${job}`));
  const rest = bytes.subarray(1);
  if (!bytes[0]) return rest;
  const [message, ...texts] = new TextDecoder().decode(rest).split('\n');
  if (!again || message !== 'needs-images') throw new Error(message);
  return drawn(job + texts.map(image).join(''), kind, false);
}

function save(bytes, kind, name) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes]));
  link.download = `${name}.${kind}`;
  link.click();
}

/** Puts the sheets alone on the browser's paper. */
function onPaper(bytes, paper) {
  const sheets = document.createElement('div');
  sheets.id = 'sheets';
  sheets.className = `sheets-${paper}`;
  sheets.innerHTML = new TextDecoder().decode(bytes);
  document.body.append(sheets);
  // The margins are in the sheets already.
  const { width, height } = sheets.querySelector('svg');
  const way = width.baseVal.value > height.baseVal.value ? ' landscape' : '';
  const rules = new CSSStyleSheet();
  rules.replaceSync(`@page { size: ${paper}${way}; margin: 0; }`);
  document.adoptedStyleSheets.push(rules);
  const done = () => {
    sheets.remove();
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((kept) => kept !== rules);
  };
  addEventListener('afterprint', done, { once: true });
  window.print();
}

// ---- The maker's choices ----

const form = document.getElementById('print-form');

/** A measured ruler in micrometres: `100`, `99,6`, `99.6 mm`. */
function measured(text) {
  const millimetres = Number.parseFloat(text.replace(',', '.'));
  if (!(millimetres >= 90 && millimetres <= 110)) {
    throw new Error('a printed ruler measures 90 to 110 mm');
  }
  return Math.round(millimetres * 1000);
}

/** The job's lines that the maker chooses. */
function lines(chosen) {
  const one = (key) => `${key}=${chosen.get(key)}\n`;
  const ruler = (key) => `${key}=${measured(chosen.get(key))}\n`;
  const parts = chosen.getAll('parts');
  if (parts.length === 0) throw new Error('nothing chosen');
  return (
    ['paper', 'rim', 'seam'].map(one).join('') +
    ['ruler-across', 'ruler-upright'].map(ruler).join('') +
    `parts=${parts.join(' ')}\n`
  );
}

/** Does a job: `kind` is a file's, or `paper` for the browser's own print. */
export async function run(job, kind) {
  await started;
  const chosen = new FormData(form);
  const whole = job + lines(chosen);
  const name = /^name=(.*)$/m.exec(job)?.[1].replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '');
  if (kind === 'paper') onPaper(drawn(whole, 'svg-pages'), chosen.get('paper'));
  else save(drawn(whole, kind), kind, name || 'tinwave');
}
