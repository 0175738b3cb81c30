// Lighthouse, as a phone on a slow network: the best of up to five runs, because
// a busy build machine makes a run slower than the page is, never faster.

import assert from 'node:assert/strict';
import { createServer } from 'node:net';
import lighthouse from 'lighthouse';
import { browser, scenario, serve } from './page.mjs';

const BARS = [
  ['accessibility', (r) => r.categories.accessibility.score, (v) => v === 1],
  ['best practices', (r) => r.categories['best-practices'].score, (v) => v === 1],
  ['SEO', (r) => r.categories.seo.score, (v) => v === 1],
  // 0.96 to 1.0 on an idle machine, for which the aim is 0.95; the rest is for busy ones.
  ['performance', (r) => r.categories.performance.score, (v) => v >= 0.8],
  ['largest contentful paint, ms', (r) => r.audits['largest-contentful-paint'].numericValue, (v) => v <= 1500],
  ['layout shift', (r) => r.audits['cumulative-layout-shift'].numericValue, (v) => v < 0.001],
];
const RUNS = 5;

async function freePort() {
  const probe = createServer();
  await new Promise((done) => probe.listen(0, '127.0.0.1', done));
  const { port } = probe.address();
  await new Promise((done) => probe.close(done));
  return port;
}

async function measured(url, port) {
  const { lhr } = await lighthouse(url, {
    port,
    logLevel: 'error',
    onlyCategories: ['accessibility', 'best-practices', 'seo', 'performance'],
  });
  assert.equal(lhr.runtimeError, undefined);
  for (const { auditRefs } of Object.values(lhr.categories)) {
    for (const { id, weight } of auditRefs) {
      const { score, title } = lhr.audits[id];
      if (weight > 0 && score !== null && score < 0.9) console.log(`below 90: ${title} (${id}) ${score}`);
    }
  }
  const tasks = lhr.audits['long-tasks'].details?.items ?? [];
  const told = tasks.map(({ url: from, duration }) => `${Math.round(duration)} ms (${from.split('/').pop()})`);
  console.log(`tasks over 50 ms at a phone's speed: ${told.join(', ') || 'none'}`);
  return BARS.map(([, read]) => read(lhr));
}

scenario(
  'every category and the largest paint are within their bars',
  async (t) => {
    const { url } = await serve(t);
    const port = await freePort();
    await browser([`--remote-debugging-port=${port}`]);
    const runs = [];
    const missed = () => BARS.filter(([, , holds], i) => !runs.some((run) => holds(run[i])));
    do {
      runs.push(await measured(url, port));
      console.log(BARS.map(([name], i) => `${name} ${runs.at(-1)[i]}`).join(', '));
    } while (runs.length < RUNS && missed().length > 0);
    assert.deepEqual(missed().map(([name]) => name), []);
  },
  300_000,
);
