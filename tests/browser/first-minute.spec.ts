import { expect, test } from './app.ts';
import { heardLevel, verdict } from './bench.ts';

test('the first minute: hear the demo station, make it louder, take it back', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await expect(page.getByText('What would help, best first')).toBeVisible();

  await page.getByRole('button', { name: 'Listen', exact: true }).click();
  await expect(page.getByText(/the set gives [\d.]+ dB SPL/)).toBeVisible();
  const before = await heardLevel(page, 1500);
  expect(before).toBeGreaterThan(-60);

  const first = page.getByRole('button', { name: /^do it: / }).first();
  await first.click();
  await expect(verdict(page)).toContainText('clearly');
  await expect.poll(() => heardLevel(page, 800), { timeout: 15_000 }).toBeGreaterThan(before + 6);

  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(verdict(page)).toContainText('mostly understood');
  await page.getByRole('button', { name: 'Stop', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Listen', exact: true })).toBeVisible();
});
