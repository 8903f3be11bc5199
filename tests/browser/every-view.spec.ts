import { mkdirSync } from 'node:fs';
import AxeBuilder from '@axe-core/playwright';
import { expect, test } from './app.ts';
import { verdict } from './bench.ts';

const VIEWS = [
  'place',
  'aerial',
  'tank',
  'slope',
  'detector',
  'phones',
  'ear',
  'listen',
  'drawer',
  'find',
  'tolerance',
  'sheet',
  'compare',
  'file',
] as const;
const SIZES = { phone: { width: 360, height: 740 }, laptop: { width: 1280, height: 800 }, wide: { width: 1920, height: 1080 } } as const;
/** Pictures of every view, to be looked at after a run. */
const SCREENS = '.cache/screens';

for (const [size, viewport] of Object.entries(SIZES))
  for (const colorScheme of ['light', 'dark'] as const)
    test(`every view at ${size} size, ${colorScheme}: nothing runs off the page, axe finds nothing to mend`, async ({ page }) => {
      test.setTimeout(300_000);
      mkdirSync(SCREENS, { recursive: true });
      await page.setViewportSize(viewport);
      await page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
      await page.goto('/');
      await expect(verdict(page)).toContainText('Fen Talk is heard');
      await expect(page.getByText('What would help, best first')).toBeVisible();
      await page.screenshot({ path: `${SCREENS}/first-${size}-${colorScheme}.png` });
      for (const view of VIEWS) {
        await page.getByRole('tab', { name: view, exact: true }).click();
        await expect(page.locator('#view > [aria-busy="false"]')).toBeVisible();
        if (view === 'drawer') await page.getByRole('button', { name: /demo drawer/ }).click();
        // what a search finds looks the same at every size but for its columns: one size shows it
        if (view === 'find' && size === 'laptop') {
          await page.getByRole('button', { name: 'start', exact: true }).click();
          await expect(page.getByRole('article', { name: 'Found 5' })).toBeVisible();
          await page.getByRole('button', { name: 'stop', exact: true }).click();
        }
        // figures and pictures come one after the other; a sheet takes some seconds
        if (size === 'laptop') await expect(page.locator('#view [aria-busy="true"]')).toHaveCount(0, { timeout: 30_000 });
        await page.waitForTimeout(700);
        const over = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
        expect(over, `${view} runs off the page`).toBeLessThanOrEqual(0);
        await page.screenshot({ path: `${SCREENS}/${view}-${size}-${colorScheme}.png`, fullPage: true });
        // colours and names do not depend on the width: one size tells
        if (size !== 'laptop') continue;
        const { violations } = await new AxeBuilder({ page }).analyze();
        expect(violations.map((v) => `${view}, ${v.id}: ${v.nodes.map((n) => n.html).join(' ')}`)).toEqual([]);
      }
    });
