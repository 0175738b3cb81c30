// The content policy: strict, exact, and nothing on the page needs more.

import assert from 'node:assert/strict';
import { checkQuiet, keptOffline, open, ready, scenario, serve } from './page.mjs';

const POLICY =
  "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; " +
  "img-src 'self'; connect-src 'self'; manifest-src 'self'; worker-src 'self'; " +
  "base-uri 'none'; form-action 'none'";

scenario('the page carries exactly the policy, before anything that loads', async (t) => {
  const { url } = await serve(t);
  const text = await (await fetch(url)).text();
  const carried = [...text.matchAll(/http-equiv="Content-Security-Policy" content="([^"]*)"/g)];
  assert.deepEqual(carried.map(([, policy]) => policy), [POLICY]);
  const firstLoad = text.search(/<(link|script|img|style)\b/);
  assert.ok(carried[0].index < firstLoad, 'a policy after a loading element would not bind it');
});

scenario('nothing in the markup needs more: no inline script, no handler, no style', async (t) => {
  const { url } = await serve(t);
  const text = await (await fetch(url)).text();
  const tags = text.match(/<[a-z][^>]*>/g);
  assert.ok(tags.length > 50, 'the first paint is there');
  assert.deepEqual(tags.filter((tag) => /\s(style|on[a-z]+)=/.test(tag)), []);
  const scripts = tags.filter((tag) => tag.startsWith('<script') || tag.startsWith('<style'));
  assert.ok(scripts.every((tag) => tag.includes(' src="./')), `${scripts}`);
});

scenario('a whole visit violates nothing and asks no other host', async (t) => {
  const server = await serve(t);
  const page = await open(t, 'about:blank');
  const foreign = [];
  page.context().on('request', (request) => {
    const { protocol, href } = new URL(request.url());
    if (protocol.startsWith('http') && !href.startsWith(server.url)) foreign.push(href);
  });
  await page.goto(server.url);
  await ready(page);
  await keptOffline(page);
  await checkQuiet(page);
  assert.deepEqual(foreign, []);
});

scenario('inline script, inline style and inline handlers are refused, and heard of', async (t) => {
  const { url } = await serve(t);
  const page = await ready(await open(t, url));
  const result = await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.inlineRan = true';
    document.body.append(script);
    const style = document.createElement('style');
    style.textContent = 'h1 { letter-spacing: 77px !important }';
    document.head.append(style);
    const button = document.createElement('button');
    button.setAttribute('onclick', 'window.handlerRan = true');
    document.body.append(button);
    button.click();
    return {
      inline: window.inlineRan,
      handler: window.handlerRan,
      spacing: getComputedStyle(document.querySelector('h1')).letterSpacing,
    };
  });
  assert.equal(result.inline, undefined);
  assert.equal(result.handler, undefined);
  assert.notEqual(result.spacing, '77px');
  // The same ear that the visit above relies on has heard each refusal.
  await page.waitForTimeout(500);
  const told = page.problems.filter((text) => text.startsWith('policy violated'));
  assert.equal(told.length, 3, `${told}`);
});
