import { expect, test } from './app.ts';
import { verdict } from './bench.ts';

test('a field that cannot be is told beside it, keeps what was typed, and loses nothing', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.getByRole('tab', { name: 'tank' }).click();
  const diameter = page.getByRole('textbox', { name: 'inner diameter' });
  await diameter.fill('10 apples');
  await diameter.blur();
  await expect(page.getByText(/apples/).first()).toBeVisible();
  await expect(diameter).toHaveValue('10 apples');
  await expect(diameter).toHaveAttribute('aria-invalid', 'true');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await diameter.fill('12 mm');
  await diameter.blur();
  await expect(diameter).toHaveAttribute('aria-invalid', 'false');
  await expect(page.getByText(/apples/)).toHaveCount(0);
});

test('parts are chosen by name, and can be written out to be changed', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.getByRole('tab', { name: 'tank' }).click();
  const capacitor = page.getByRole('group', { name: 'capacitor' });
  await capacitor.getByLabel('part').selectOption({ index: 3 });
  await expect(page.getByRole('button', { name: 'Undo' })).toBeEnabled();
  await capacitor.getByRole('button', { name: /write its values out/ }).click();
  await expect(capacitor.getByRole('textbox', { name: 'maximum' })).not.toHaveValue('');
});

test('undo and redo over everything, by button and by key; the work is there after a reload', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  // the best change is part of it as soon as it is known
  await expect(verdict(page)).toContainText('what would help most');
  const before = await verdict(page).textContent();
  await page.getByRole('tab', { name: 'tank' }).click();
  const turns = page.getByRole('group', { name: 'coil' }).getByRole('textbox', { name: 'turns' });
  await turns.fill('4');
  await turns.blur();
  await expect(verdict(page)).not.toHaveText(before!);
  await expect(verdict(page)).toContainText('what would help most');
  const after = await verdict(page).textContent();
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(verdict(page)).toHaveText(before!);
  await page.keyboard.press('Control+y');
  await expect(verdict(page)).toHaveText(after!);
  // kept once the hand rests
  await page.waitForTimeout(1500);
  await page.reload();
  await page.getByRole('tab', { name: 'tank' }).click();
  await expect(page.getByRole('group', { name: 'coil' }).getByRole('textbox', { name: 'turns' })).toHaveValue('4');
});
