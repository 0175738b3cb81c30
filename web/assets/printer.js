// Prints: turns the page's job and the choices beside it into a file or sheets.
// Fetched, with the program that draws, only when something is to be printed.

import start, { print } from './{{print}}';

const started = start({ module_or_path: new URL('./{{print_wasm}}', import.meta.url) });
const EM_PX = 64;

/** A text as the browser's own fonts draw it, one bit to a pixel. */
function image(words) {
  const canvas = document.createElement('canvas');
  const pen = canvas.getContext('2d', { willReadFrequently: true });
  const font = `${EM_PX}px sans-serif`;
  pen.font = font;
  const width = Math.max(1, Math.ceil(pen.measureText(words).width));
  const [baseline, height] = [Math.ceil(EM_PX * 1.1), Math.ceil(EM_PX * 1.5)];
  Object.assign(canvas, { width, height });
  pen.font = font;
  pen.fillText(words, 0, baseline);
  const { data } = pen.getImageData(0, 0, width, height);
  let rows = '';
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x += 8) {
      let byte = 0;
      for (let bit = 0; bit < 8; bit++) {
        if (x + bit < width && data[(y * width + x + bit) * 4 + 3] > 127) byte |= 128 >> bit;
      }
      rows += byte.toString(16).padStart(2, '0');
    }
  }
  return `image=${EM_PX} ${baseline} ${width} ${height} ${rows} ${words}\n`;
}

/** The file's bytes; texts that its fonts lack are drawn and handed in. */
function drawn(job, kind) {
  for (let attempt = 0; attempt < 2; attempt++) {
    const bytes = print(new TextEncoder().encode(`${kind}\n${job}`));
    if (bytes[0] === 0) return bytes.subarray(1);
    const [message, ...texts] = new TextDecoder().decode(bytes.subarray(1)).split('\n');
    if (message !== 'needs-images') throw new Error(message);
    job += texts.map(image).join('');
  }
  throw new Error('a text is missing');
}

function save(bytes, kind, name) {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes]));
  link.download = `${name}.${kind}`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
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

// ---- The maker's choices, kept on the device ----

const KEPT = 'tinwave.print';
const form = document.getElementById('print-form');

function choices() {
  const chosen = new FormData(form);
  try {
    localStorage.setItem(KEPT, JSON.stringify([...chosen]));
  } catch {
    // Storage is shut: then they are asked for anew next time.
  }
  return chosen;
}

/** A measured ruler in micrometres: `100`, `99,6`, `99.6 mm`. */
function measured(text) {
  const millimetres = Number.parseFloat(String(text).replace(',', '.'));
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
  if (parts.length === 0) throw new Error('nothing is chosen');
  return (
    ['paper', 'rim', 'seam'].map(one).join('') +
    ['ruler-across', 'ruler-upright'].map(ruler).join('') +
    `parts=${parts.join(' ')}\n`
  );
}

/** Does a job: `kind` is a file's, or `paper` for the browser's own print. */
export async function run(job, kind) {
  await started;
  const chosen = choices();
  const whole = job + lines(chosen);
  const name = /^name=(.*)$/m.exec(job)?.[1].replace(/[^\p{L}\p{N}]+/gu, '-').replace(/^-+|-+$/g, '');
  if (kind === 'paper') onPaper(drawn(whole, 'svg-pages'), chosen.get('paper'));
  else save(drawn(whole, kind), kind, name || 'tinwave');
}
