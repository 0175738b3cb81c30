// Accessibility of the page as it opens: narrow and wide, light and dark.

import { checkAxe, open, ready, scenario, serve } from './page.mjs';

for (const width of [360, 1280]) {
  for (const colorScheme of ['light', 'dark']) {
    scenario(`no violation at ${width} px, ${colorScheme}`, async (t) => {
      const { url } = await serve(t);
      const page = await ready(await open(t, url, { width, colorScheme }));
      await page.locator('#offline-note').waitFor();
      await checkAxe(page);
    });
  }
}
