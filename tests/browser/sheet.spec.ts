import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateRawSync } from 'node:zlib';
import type { Page } from '@playwright/test';
import { copiedFrom, dotsOf, longest, needPoppler, textOf, wordsOf } from '../unit/sheet/poppler.ts';
import { expect, test } from './app.ts';
import { verdict } from './bench.ts';

/** What a print may be off by [mm]. */
const OFF = 0.3;

test.beforeAll(needPoppler);

/** What a sheet says up to its code, and the code. */
function parted(pdf: Uint8Array): { readonly before: string; readonly code: string } {
  const text = copiedFrom(pdf);
  const at = text.indexOf('set1=');
  const code = /^set1=(.*?)\d+ characters/.exec(text.slice(at))![1]!.replaceAll(' ', '');
  return { before: text.slice(0, at), code };
}

const unpacked = (code: string): string => inflateRawSync(Buffer.from(code, 'base64url')).toString();

const pagesOf = (page: Page) => page.getByRole('list', { name: 'pages of the sheet' }).getByRole('listitem');

async function open(page: Page): Promise<void> {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.getByRole('tab', { name: 'sheet', exact: true }).click();
  await page.getByLabel('paper').selectOption('a4');
  await expect(page.locator('#view [aria-busy="false"] .sheet-pages')).toBeVisible({ timeout: 30_000 });
}

test('the file saved says what the one of the command line does, and its code holds the same set', async ({ page }) => {
  await open(page);
  await expect(pagesOf(page).first()).toContainText('Fen Talk');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'save as PDF' }).click();
  const saved = readFileSync(await (await download).path());
  expect((await download).suggestedFilename()).toBe('dipole-and-small-coil.pdf');
  const folder = mkdtempSync(join(tmpdir(), 'earshot-sheet-'));
  try {
    const out = join(folder, 'sheet.pdf');
    const command = ['dist/cli/earshot.mjs', 'sheet', 'examples/dipole-and-small-coil.json', '--station', 'Fen Talk', '-o', out];
    expect(spawnSync(process.execPath, command).status).toBe(0);
    const [ours, theirs] = [saved, readFileSync(out)].map(parted);
    expect(ours!.before).toBe(theirs!.before);
    // browser and Node pack the same bytes in different ways
    expect(unpacked(ours!.code)).toBe(unpacked(theirs!.code));
  } finally {
    rmSync(folder, { recursive: true });
  }
});

test('printed from the page it is the pages alone, each on a paper of its own, true to scale', async ({ page }) => {
  await open(page);
  const count = await pagesOf(page).count();
  expect(count).toBeGreaterThan(4);
  const pdf = await page.pdf({ preferCSSPageSize: true, printBackground: true });
  const printed = wordsOf(pdf);
  expect(printed).toHaveLength(count);
  const text = textOf(pdf);
  expect(text).toContain('page 1 of');
  // nothing of the page around it
  expect(text).not.toContain('save as PDF');
  expect(text).not.toContain('What would help, best first');
  for (const [k, dots] of dotsOf(pdf).entries()) {
    const { width, height } = printed[k]!;
    expect([width, height].sort((a, b) => a - b)).toEqual([expect.closeTo(210, 0), expect.closeTo(297, 0)]);
    const across = longest(dots, { left: 13, right: width - 60, top: height - 17, bottom: height - 14 }).across;
    const down = longest(dots, { left: 4, right: 8, top: height - 125, bottom: height - 12 }).down;
    expect(Math.abs(across - 100), `page ${k + 1}`).toBeLessThan(OFF);
    expect(Math.abs(down - 100), `page ${k + 1}`).toBeLessThan(OFF);
  }
});

test('a changed set has its pages changed; the paper is the one chosen', async ({ page }) => {
  await open(page);
  await page.getByLabel('paper').selectOption('letter');
  await expect(pagesOf(page).first().locator('svg')).toHaveAttribute('width', '215.9mm', { timeout: 30_000 });
  await page.getByRole('tab', { name: 'tank', exact: true }).click();
  await page.getByLabel('turns', { exact: true }).first().fill('5 1/2');
  await page.keyboard.press('Enter');
  await page.getByRole('tab', { name: 'sheet', exact: true }).click();
  await expect(page.locator('.sheet-pages')).toContainText('Wind 5 1/2 turns', { timeout: 30_000 });
});
