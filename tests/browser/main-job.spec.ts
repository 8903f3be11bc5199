import { spawnSync } from 'node:child_process';
import { expect, test } from './app.ts';
import { verdict } from './bench.ts';

/** What the command line says of an example; it is built first, since it may not be there. */
function fromCommandLine(file: string): {
  stations: { name: string; sentence: string; figures: Record<string, { value: number | null }> }[];
} {
  spawnSync(process.execPath, ['node_modules/rolldown/bin/cli.mjs', '-c', 'rolldown.cli.config.mjs', '--log-level', 'silent']);
  const { stdout } = spawnSync(process.execPath, ['dist/cli/earshot.mjs', 'hear', `examples/${file}`, '--json'], {
    encoding: 'utf8',
    maxBuffer: 1e8,
  });
  return JSON.parse(stdout);
}

for (const file of ['dipole-and-small-coil.json', 'medium-wave.json'])
  test(`${file}: the screen says what the command line says`, async ({ page }) => {
    const told = fromCommandLine(file);
    await page.goto('/');
    await expect(verdict(page)).toContainText('Fen Talk is heard');
    await page.getByLabel('open an example').selectOption(file);
    for (const [k, station] of told.stations.entries()) {
      await page.getByRole('combobox', { name: 'station' }).selectOption({ index: k });
      await expect(verdict(page)).toHaveText(station.sentence);
    }
  });

test('the main job by keyboard alone: pick a station, read the path, make a change, hear what it did', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await expect(page.getByText('What would help, best first')).toBeVisible();
  const focused = (): Promise<string> =>
    page.evaluate(() => {
      const e = document.activeElement as HTMLElement;
      return e.getAttribute('aria-label') ?? e.textContent ?? '';
    });
  const tabTo = async (wanted: RegExp): Promise<void> => {
    for (let k = 0; k < 80; k++) {
      await page.keyboard.press('Tab');
      if (wanted.test(await focused())) return;
    }
    throw new Error(`no way by keyboard to ${wanted}`);
  };
  // a stage of the path opens by key
  await tabTo(/^tank/);
  await page.keyboard.press('Enter');
  await expect(page.getByRole('tab', { name: 'tank', exact: true })).toHaveAttribute('aria-selected', 'true');
  // the dial turns by key, and comes back to its best place
  await tabTo(/^dial$/);
  const before = await verdict(page).textContent();
  for (let k = 0; k < 5; k++) await page.keyboard.press('ArrowRight');
  await expect(verdict(page)).not.toHaveText(before!);
  await tabTo(/^best$/);
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toHaveText(before!);
  // what would help most is done, and undone
  await tabTo(/^do it: /);
  await page.keyboard.press('Enter');
  await expect(verdict(page)).toContainText('clearly');
  await page.keyboard.press('Control+z');
  await expect(verdict(page)).toHaveText(before!);
});
