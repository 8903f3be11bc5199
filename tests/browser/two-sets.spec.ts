import { readFileSync } from 'node:fs';
import { expect, test } from './app.ts';
import { heardLevel, verdict } from './bench.ts';

test('two sets: side by side in figures, in turn by ear, at true level and matched by a stated gain; the sound as a file', async ({
  page,
}) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.getByRole('tab', { name: 'compare', exact: true }).click();
  await page.getByRole('button', { name: 'put this set aside' }).click();
  await page.getByRole('button', { name: /^do it: use the earpiece/ }).click();
  await expect(verdict(page)).toContainText('clearly');

  const table = page.getByRole('region', { name: 'sets side by side' });
  await expect(table.getByRole('row', { name: /how it is heard/ })).toContainText('clear');
  await expect(table.getByRole('row', { name: /how it is heard/ })).toContainText('understandable');
  await expect(table.getByRole('row', { name: /phones, earpiece, part/ })).toContainText('ceramic-earpiece');
  await expect(table.locator('.differs').first()).toBeVisible();

  // one number over a range
  await page.getByRole('button', { name: 'draw it' }).click();
  await expect(page.getByRole('slider', { name: /over tank, coil, turns: arrow keys/ })).toBeVisible();
  await page.getByRole('slider', { name: /over tank, coil, turns: arrow keys/ }).focus();
  for (let k = 0; k < 30; k++) await page.keyboard.press('ArrowRight');
  await expect(page.locator('.reading-line')).toContainText('dB SPL');

  await page.getByRole('tab', { name: 'listen', exact: true }).click();
  await page.getByLabel('programme', { exact: true }).selectOption('tone');
  for (const beside of [/noise of the room/, /limit of hearing/]) await page.getByLabel(beside).uncheck();
  await page.getByLabel(/beside the set on the bench/).selectOption({ index: 1 });
  await page.getByRole('button', { name: 'Listen', exact: true }).first().click();
  await expect(page.getByText(/the set gives [\d.]+ dB SPL/).first()).toBeVisible();
  // the one on the bench is much louder than the one put aside; which of the two is heard is told by the button
  const own = await heardLevel(page, 1200);
  await page.getByRole('button', { name: /hear: Dipole/ }).click();
  await page.waitForTimeout(500);
  expect(await heardLevel(page, 800)).toBeLessThan(own - 40);
  await page.getByLabel(/made as loud as/).check();
  await expect(page.getByText(/is played [\d.]+ dB louder than it is, to match/)).toBeVisible();
  await page.getByRole('button', { name: 'hear: on the bench' }).click();
  await page.getByRole('button', { name: 'Stop', exact: true }).first().click();

  await page.getByLabel('length in seconds').fill('2');
  await page.getByRole('button', { name: 'make a WAV file' }).click();
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save the WAV file' }).click();
  const bytes = readFileSync(await (await download).path());
  expect(bytes.subarray(0, 4).toString('latin1')).toBe('RIFF');
  expect(bytes.readUInt32LE(24)).toBe(48_000);
  expect(bytes.length).toBeGreaterThan(2 * 48_000 * 3);
  expect(bytes.toString('latin1')).toContain('Make-up gain 20 dB');
});

test('files dropped on the page are opened', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.evaluate(() => {
    const data = new DataTransfer();
    const set = { version: 1, name: 'Dropped', set: { file: 'dipole-and-small-coil.json' }, place: { file: 'fenmarket.json' } };
    data.items.add(new File([JSON.stringify(set)], 'dropped.json', { type: 'application/json' }));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
  });
  await expect(page.locator('.where strong')).toHaveText('Dropped');
});
