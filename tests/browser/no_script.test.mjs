// What stands in the page without any program: the example's frame, verdict, figures and
// drawing, to be read in light and in dark.

import assert from 'node:assert/strict';
import { profile, scenario, serve } from './page.mjs';

/** How many colours a picture has, and the greatest contrast between two of them. */
async function countColours(t, png) {
  const context = await profile(t);
  const page = await context.newPage();
  return page.evaluate(async (base64) => {
    const image = new Image();
    image.src = `data:image/png;base64,${base64}`;
    await image.decode();
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [image.width, image.height];
    const paint = canvas.getContext('2d');
    paint.drawImage(image, 0, 0);
    const { data } = paint.getImageData(0, 0, canvas.width, canvas.height);
    const counts = new Map();
    for (let i = 0; i < data.length; i += 4) {
      const key = `${data[i]},${data[i + 1]},${data[i + 2]}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    }
    // WCAG 2.2, "relative luminance" and "contrast ratio".
    const luminance = (key) => {
      const [r, g, b] = key.split(',').map((part) => {
        const share = part / 255;
        return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
      });
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const often = [...counts].filter(([, count]) => count > 50).map(([key]) => luminance(key));
    return { colours: counts.size, contrast: (Math.max(...often) + 0.05) / (Math.min(...often) + 0.05) };
  }, png.toString('base64'));
}

for (const colorScheme of ['light', 'dark']) {
  for (const [width, height] of [[360, 740], [1366, 850]]) {
    scenario(`without JavaScript, ${colorScheme}, ${width} px: the can is there and can be read`, async (t) => {
      const { url } = await serve(t);
      const context = await profile(t, { width, height, colorScheme, javaScriptEnabled: false });
      const page = await context.newPage();
      await page.goto(url);
      assert.equal(await page.locator('h1').innerText(), 'Will do');
      for (const name of ['Drill at', 'Cut the wire']) assert.ok(await page.getByText(name).first().isVisible(), name);
      assert.ok(await page.getByText(/JavaScript/).first().isVisible());
      // The can in section: there, as wide as its column, and not in its ground's colour.
      // One drawing is for phones, one for desks.
      const picture = page.locator('.place-picture svg').filter({ visible: true }).first();
      const box = await picture.boundingBox();
      assert.ok(box && box.width > 250 && box.height > 100, JSON.stringify(box));
      const seen = await countColours(t, await picture.screenshot());
      assert.ok(seen.colours > 3 && seen.contrast > 4.5, JSON.stringify(seen));
    });
  }
}
