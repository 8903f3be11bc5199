import { readFileSync } from 'node:fs';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { bestStation, ToleranceRun } from '#find';
import { readSetFile } from '#set-file';
import { chanceWords } from '#tell';
import { expect, test } from './app.ts';
import { verdict } from './bench.ts';

const tab = (page: Page, name: string) => page.getByRole('tab', { name, exact: true });
const status = (page: Page) => page.getByRole('status', { name: 'sets built' });
const built = async (page: Page): Promise<number> => Number(/(\d+) sets? built/.exec((await status(page).textContent())!)![1]);
/** Sets of the picture, class by class. */
const drawn = (page: Page): Promise<number> =>
  page.locator('.plot [data-dots]').evaluateAll((paths) => paths.reduce((sum, p) => sum + Number((p as SVGElement).dataset.count), 0));

/** The set the app opens with, built as often by the engine itself. */
function byEngine(samples: number, seed: number) {
  const text = readFileSync('examples/dipole-and-small-coil.json', 'utf8');
  const read = readSetFile(text, { read: (name) => readFileSync(`examples/${name}`, 'utf8') });
  if (!read.ok || !read.value.place) throw new Error('the example does not read');
  const { place, aerial, tank, detector, phones, ear, programme } = read.value;
  const situation = { place, set: { aerial, tank, detector, phones }, listener: { ear, programme } };
  const station = bestStation(situation)!;
  const run = new ToleranceRun({ ...situation, station }, { parts: read.parts, seed });
  run.step(samples);
  return { name: place.stations[station]!.name, result: run.result() };
}

test('many builds: they begin by themselves, dots grow, the figures are those of the engine for the same seed; more, stop, changed, anew', async ({
  page,
}) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await tab(page, 'tolerance').click();
  await expect(status(page)).toContainText(/\d+ sets built on paper/);
  await expect(page.getByRole('button', { name: 'build 256 more' })).toBeVisible();
  expect(await built(page)).toBe(256);
  expect(await drawn(page)).toBe(256);

  const { name, result } = byEngine(256, 1);
  const odds = page.getByRole('region', { name: 'How it comes out' });
  await expect(status(page)).toContainText(name);
  for (const chance of [result.heard, result.understood, result.covers]) await expect(odds).toContainText(chanceWords(chance, 256));
  const [low, , high] = result.loudness.headroom!;
  await expect(odds).toContainText(`${low.toFixed(0)} to ${high.toFixed(0)} dB in 80 of 100`);

  await page.getByRole('button', { name: 'build 256 more' }).click();
  await page.getByRole('button', { name: 'stop', exact: true }).click();
  await expect(page.getByRole('button', { name: /^build \d+ more$/ })).toBeVisible();
  const stopped = await built(page);
  expect(stopped).toBeGreaterThanOrEqual(256);
  expect(stopped).toBeLessThanOrEqual(512);
  expect(await drawn(page)).toBe(stopped);

  // it goes on whatever view is open
  await page.getByRole('button', { name: /^build \d+ more$/ }).click();
  await tab(page, 'ear').click();
  await tab(page, 'tolerance').click();
  await expect.poll(() => built(page)).toBeGreaterThan(stopped);

  const across = page.getByRole('radio', { name: 'frequency off what was meant' });
  await across.check();
  await expect(page.locator('[data-axis="x"]')).toContainText('frequency off what was meant');
  expect(await drawn(page)).toBeGreaterThan(stopped);

  await tab(page, 'tank').click();
  const turns = page.getByRole('textbox', { name: 'turns', exact: true }).first();
  await turns.fill('6');
  await turns.blur();
  await tab(page, 'tolerance').click();
  await expect(page.getByText(/has changed since/)).toBeVisible();
  await page.getByRole('combobox', { name: 'judged by station' }).selectOption({ index: 2 });
  await expect(page.getByText(/has changed since/)).toHaveCount(0);
  await expect(page.getByRole('button', { name: 'build 256 more' })).toBeVisible();
});

test('another seed makes other errors; by keyboard, and axe finds nothing to mend with everything open', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await tab(page, 'tolerance').click();
  await expect(page.getByRole('button', { name: 'build 256 more' })).toBeVisible();
  const before = await page.getByRole('region', { name: 'How it comes out' }).textContent();
  const seed = page.getByRole('spinbutton', { name: 'seed' });
  await seed.fill('9');
  await seed.press('Enter');
  await expect(status(page)).toContainText('seed 9');
  await expect(page.getByRole('button', { name: 'build 256 more' })).toBeVisible();
  expect(await page.getByRole('region', { name: 'How it comes out' }).textContent()).not.toBe(before);
  await page.getByText(/every error that was thrown in/).click();
  const { violations } = await new AxeBuilder({ page }).analyze();
  expect(violations.map((v) => `${v.id}: ${v.nodes.map((n) => n.html).join(' ')}`)).toEqual([]);
});
