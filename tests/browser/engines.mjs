// Other engines behind one small interface, for stories that every browser must tell
// alike: Firefox by WebDriver BiDi (puppeteer), WebKitGTK by WebDriver (selenium).
//
//   const page = await firefox(t) | await webkit(t)
//   page.goto(url), page.run(function, ...arguments)     in the page; gives what it returns
//   page.click(selector), page.type(selector, text)      as a person would
//   page.until(function, ...arguments)                   waits until it returns something true
//   page.upload(selector, file), page.offline(bool)      Firefox alone

import { spawn } from 'node:child_process';
import { mkdtemp, rm } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import puppeteer from 'puppeteer-core';
import { Builder, By, Capabilities } from 'selenium-webdriver';
import { PATIENCE_MS } from './page.mjs';

const required = (name) => {
  const value = process.env[name];
  if (!value) throw new Error(`${name} is not set: run these tests by "cargo test -p tinwave-tests"`);
  return value;
};

/** Waits until a question is answered by something true. */
async function until(ask, told) {
  const end = Date.now() + PATIENCE_MS;
  for (;;) {
    const answer = await ask();
    if (answer) return answer;
    if (Date.now() > end) throw new Error(`waited in vain for ${told}`);
    await new Promise((done) => setTimeout(done, 50));
  }
}

export async function firefox(t, { width = 360, height = 740 } = {}) {
  const browser = await puppeteer.launch({
    browser: 'firefox',
    executablePath: required('TINWAVE_FIREFOX'),
    headless: true,
    protocol: 'webDriverBiDi',
  });
  t.after(() => browser.close());
  const page = await browser.newPage();
  page.setDefaultTimeout(PATIENCE_MS);
  await page.setViewport({ width, height });
  const problems = [];
  page.on('pageerror', (error) => problems.push(String(error)));
  return {
    name: 'Firefox',
    problems,
    goto: (url) => page.goto(url),
    reload: () => page.reload(),
    run: (script, ...given) => page.evaluate(script, ...given),
    until: (script, ...given) => until(() => page.evaluate(script, ...given), script),
    click: async (selector) => (await page.waitForSelector(selector, { visible: true })).click(),
    type: async (selector, text) => {
      await (await page.waitForSelector(selector, { visible: true })).click();
      await page.keyboard.type(text);
    },
    upload: async (selector, file) => (await page.waitForSelector(selector)).uploadFile(file),
  };
}

async function freePort() {
  const probe = createServer();
  await new Promise((done) => probe.listen(0, '127.0.0.1', done));
  const { port } = probe.address();
  await new Promise((done) => probe.close(done));
  return port;
}

async function isUp(port) {
  try {
    return (await fetch(`http://127.0.0.1:${port}/status`)).ok;
  } catch {
    return false;
  }
}

export async function webkit(t, { width = 500, height = 740 } = {}) {
  const port = await freePort();
  const home = await mkdtemp(join(tmpdir(), 'tinwave-webkit-'));
  const driver = spawn('xvfb-run', ['-a', required('TINWAVE_WEBKIT_DRIVER'), `--port=${port}`], {
    stdio: 'ignore',
    detached: true,
    // Its sandbox needs rights that a build machine does not give; its profile is its own.
    env: { ...process.env, HOME: home, WEBKIT_DISABLE_SANDBOX_THIS_IS_DANGEROUS: '1' },
  });
  t.after(async () => {
    try {
      process.kill(-driver.pid);
    } catch {
      // It is gone already.
    }
    await rm(home, { recursive: true, force: true });
  });
  await until(() => isUp(port), "WebKit's driver");
  const wanted = new Capabilities();
  wanted.set('browserName', 'MiniBrowser');
  wanted.set('webkitgtk:browserOptions', { binary: required('TINWAVE_WEBKIT'), args: ['--automation'] });
  const browser = await new Builder().usingServer(`http://127.0.0.1:${port}`).withCapabilities(wanted).build();
  t.after(() => browser.quit().catch(() => {}));
  await browser.manage().window().setRect({ width, height });
  const run = (script, ...given) => browser.executeScript(`return (${script}).apply(null, arguments)`, ...given);
  const find = async (selector) => {
    await until(() => run((css) => Boolean(document.querySelector(css)), selector), selector);
    return browser.findElement(By.css(selector));
  };
  return {
    name: 'WebKitGTK',
    problems: [],
    goto: (url) => browser.get(url),
    run,
    until: (script, ...given) => until(() => run(script, ...given), script),
    click: async (selector) => (await find(selector)).click(),
    type: async (selector, text) => {
      const element = await find(selector);
      await element.click();
      await element.sendKeys(text);
    },
  };
}
