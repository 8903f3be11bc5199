import { mkdirSync } from 'node:fs';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
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
  test(`every view at ${size} size, light and dark: nothing runs off the page, axe finds nothing to mend`, async ({ page }) => {
    test.setTimeout(300_000);
    mkdirSync(SCREENS, { recursive: true });
    await page.setViewportSize(viewport);
    const light = (colorScheme: 'light' | 'dark') => page.emulateMedia({ colorScheme, reducedMotion: 'reduce' });
    await light('light');
    await page.goto('/');
    await expect(verdict(page)).toContainText('Fen Talk is heard');
    await expect(page.getByText('What would help, best first')).toBeVisible();
    await page.screenshot({ path: `${SCREENS}/first-${size}-light.png` });
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
      // colours and names do not depend on the width, nor names on the colours; paper is white in any light
      if (size === 'laptop') expect(await faults(page, view)).toEqual([]);
      await page.screenshot({ path: `${SCREENS}/${view}-${size}-light.png`, fullPage: true });
      await light('dark');
      if (size === 'laptop' && view !== 'sheet') expect(await faults(page, view, ['color-contrast'])).toEqual([]);
      await page.screenshot({ path: `${SCREENS}/${view}-${size}-dark.png`, fullPage: true });
      await light('light');
    }
  });

/** What axe finds, by all of its rules or by some. */
async function faults(page: Page, view: string, rules?: string[]): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page });
  const { violations } = await (rules ? axe.withRules(rules) : axe).analyze();
  return violations.map((v) => `${view}, ${v.id}: ${v.nodes.map((n) => n.html).join(' ')}`);
}
