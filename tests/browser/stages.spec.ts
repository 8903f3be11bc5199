import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { expect, test } from './app.ts';
import { verdict } from './bench.ts';

type Viewed = 'tank' | 'slope' | 'detector';

/** Pictures of each view by name: drawings, and plots that are read by keyboard. */
const PICTURES: Readonly<Record<Viewed, { readonly drawn: readonly string[]; readonly plotted: readonly string[] }>> = {
  tank: { drawn: ['Coil', 'Dial'], plotted: ['Signal at the detector', 'Frequency per degree of the dial'] },
  slope: { drawn: ['the slope'], plotted: ['Sound on both sides of the station', 'Distortion on both sides of the station'] },
  detector: { drawn: [], plotted: ['Current against voltage, and the swing of the station on it', 'Output against input'] },
};
const VIEWED = Object.keys(PICTURES) as readonly Viewed[];

async function open(page: Page, view: Viewed): Promise<void> {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk');
  await page.getByRole('tab', { name: view, exact: true }).click();
  for (const name of PICTURES[view].drawn)
    await expect(page.locator('#view').getByRole('img', { name: new RegExp(`^${name}\\b`) })).toBeVisible();
  for (const name of PICTURES[view].plotted) await expect(plot(page, name)).toBeVisible();
}

const plot = (page: Page, name: string) => page.getByRole('slider', { name: `${name}: arrow keys read it point by point` });
const sentence = (page: Page) => page.locator('#slope-sentence');
const swingOf = async (page: Page): Promise<number> =>
  Number(/each swing of ([\d.]+) kHz/.exec((await sentence(page).textContent()) ?? '')?.[1]);
const changeOf = async (page: Page): Promise<number> =>
  Number(/changes the amplitude by ([\d.]+) %/.exec((await sentence(page).textContent()) ?? '')?.[1]);

for (const view of VIEWED) {
  test(`${view}: opens, and its plots are read by keyboard`, async ({ page }) => {
    await open(page, view);
    for (const name of PICTURES[view].plotted) {
      await plot(page, name).focus();
      await page.keyboard.press('End');
      await expect(plot(page, name)).toHaveAttribute('aria-valuetext', /: .+ at .+/);
    }
  });
}

test('tank: more turns change the verdict, the figures, the drawing and the losses', async ({ page }) => {
  await open(page, 'tank');
  const inductance = page.getByRole('row', { name: /inductance of the coil with its leads/ });
  const before = { verdict: await verdict(page).textContent(), inductance: await inductance.textContent() };
  await expect(page.getByRole('list', { name: 'how to wind it' })).toContainText('Wind 5 turns');
  await page.locator('#field-tank-coil-turns').fill('9');
  await page.keyboard.press('Tab');
  await expect(verdict(page)).not.toHaveText(before.verdict!);
  await expect(inductance).not.toHaveText(before.inductance!);
  await expect(page.getByRole('list', { name: 'how to wind it' })).toContainText('Wind 9 turns');
});

test('tank: losses stand largest first and make up the whole; each tells how it came about', async ({ page }) => {
  await open(page, 'tank');
  const shares = (await page.locator('.budget-share').allTextContents()).map((t) => Number(/[\d.]+/.exec(t)?.[0]));
  expect(shares.length).toBeGreaterThan(4);
  expect(shares).toEqual(shares.toSorted((a, b) => b - a));
  // each is rounded to a per cent or a tenth
  expect(Math.abs(shares.reduce((a, b) => a + b, 0) - 100)).toBeLessThan(2);
  await page.locator('.budget').getByRole('button').first().click();
  await expect(page.getByRole('dialog')).toContainText('formula');
});

test('slope: by keyboard the deviation changes what is said, and nothing in the set', async ({ page }) => {
  await open(page, 'slope');
  expect(await swingOf(page)).toBe(75);
  const change = await changeOf(page);
  const deviation = page.getByRole('slider', { name: 'deviation' });
  await deviation.focus();
  await page.keyboard.press('ArrowRight');
  await expect(sentence(page)).toContainText('each swing of 76 kHz');
  await page.keyboard.press('Home');
  await expect(sentence(page)).toContainText('each swing of 5 kHz');
  // a fifteenth of the swing on the same slope: less than a fifth of the change, however it is bent
  expect(await changeOf(page)).toBeLessThan(change / 5);
  await expect(page.getByText('Only tried, not in your set: the station swings 5 kHz instead of 75 kHz.')).toBeVisible();
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
  await page.getByRole('button', { name: 'back to the set as it is' }).click();
  await expect(sentence(page)).toContainText('each swing of 75 kHz');
});

test('slope: more losses, a lower Q and less change of amplitude; the dial goes to the other side', async ({ page }) => {
  await open(page, 'slope');
  const change = await changeOf(page);
  const losses = page.getByRole('slider', { name: 'losses of the tank' });
  await losses.focus();
  await page.keyboard.press('End');
  await expect(page.getByText(/^Only tried, not in your set: the tank loses 32 times as much/)).toBeVisible();
  expect(await changeOf(page)).toBeLessThan(change / 3);
  await page.getByRole('button', { name: 'back to the set as it is' }).click();
  await expect(page.getByText(/^Only tried/)).toHaveCount(0);
  const [from, to] = /kHz above/.test((await sentence(page).textContent())!) ? ['above', 'below'] : ['below', 'above'];
  await expect(sentence(page)).toContainText(`kHz ${from} the carrier`);
  const dial = page.getByRole('tabpanel').getByRole('slider', { name: 'dial', exact: true });
  await dial.focus();
  // more capacitance tunes the tank lower
  await page.keyboard.press(to === 'below' ? 'End' : 'Home');
  await expect(sentence(page)).toContainText(`kHz ${to} the carrier`);
});

test('slope: a handle is dragged', async ({ page }) => {
  await open(page, 'slope');
  const handle = page.locator('[data-handle="modulation"] .handle-knob');
  await handle.scrollIntoViewIfNeeded();
  const box = (await handle.boundingBox())!;
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 15, y, { steps: 3 });
  await page.mouse.up();
  await expect.poll(() => swingOf(page)).toBeGreaterThan(80);
});

test('slope: the dot stands still where motion is not wanted, and swings where it is let', async ({ page }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await open(page, 'slope');
  const dot = page.locator('[data-moment="amplitude"]');
  const where = (): Promise<string | null> => dot.getAttribute('cx');
  const before = await where();
  await page.waitForTimeout(500);
  expect(await where()).toBe(before);
  await page.getByRole('button', { name: 'let the dot swing' }).click();
  await expect.poll(where).not.toBe(before);
  await page.getByRole('button', { name: 'hold the dot' }).click();
  const held = await where();
  await page.waitForTimeout(300);
  expect(await where()).toBe(held);
});

test('slope: a station with amplitude modulation needs none, and that is said', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk');
  await page.getByRole('tab', { name: 'slope', exact: true }).click();
  const set = { name: 'medium-wave.json', mimeType: 'application/json', buffer: readFileSync('examples/medium-wave.json') };
  await page.locator('input[type="file"]').first().setInputFiles(set);
  await expect(sentence(page)).toContainText("This station's amplitude swings already, by 80 %");
  await expect(page.getByRole('slider', { name: 'depth' })).toBeVisible();
});

test('detector: the station is told where it works the detector', async ({ page }) => {
  await open(page, 'detector');
  await expect(page.getByText(/This station puts .+ peak across it, and .+ comes out/)).toBeVisible();
});
