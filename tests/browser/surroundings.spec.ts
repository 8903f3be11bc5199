import { readFileSync } from 'node:fs';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './app.ts';

const VIEWS = ['place', 'aerial', 'phones', 'ear'] as const;
type View = (typeof VIEWS)[number];

/** Pictures that each view shows of the demo, by the names they are read out under. */
const PICTURES: Readonly<Record<View, readonly RegExp[]>> = {
  place: [/^Stations by bearing and distance$/],
  aerial: [/^Aerial$/, /^Impedance at the terminals$/, /^Round the compass, 99\.2 MHz$/, /^Upright, 99\.2 MHz$/],
  phones: [/^Sensitivity of the earpiece$/, /^Load on the detector$/, /^Fen Talk, by third octaves$/],
  ear: [/^Fen Talk, by third octaves$/, /^What each band gives to being understood$/],
};

const verdict = (page: Page): Locator => page.getByRole('status', { name: 'verdict' });
const panel = (page: Page): Locator => page.getByRole('tabpanel');

async function open(page: Page, view: View): Promise<void> {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.getByRole('tab', { name: view, exact: true }).click();
  await expect(panel(page).locator('svg.earshot-drawing')).toHaveCount(PICTURES[view].length);
}

async function take(page: Page, name: string, text: string): Promise<void> {
  await page.getByLabel('table of stations to take').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
}

async function savedStations(page: Page): Promise<string> {
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save as CSV' }).click();
  return readFileSync(await (await download).path(), 'utf8');
}

for (const view of VIEWS)
  test(`${view}: its pictures are there, each with a name and told in words`, async ({ page }) => {
    await open(page, view);
    const drawings = panel(page).locator('svg.earshot-drawing');
    for (const [i, name] of PICTURES[view].entries()) {
      await expect(drawings.nth(i).locator('title')).toHaveText(name);
      await expect(drawings.nth(i).locator('desc')).toHaveText(/\d/);
    }
    await expect(panel(page).getByRole('heading', { level: 2 }).first()).toBeVisible();
    await expect(
      panel(page)
        .getByRole('button', { name: /^working of / })
        .first(),
    ).toBeVisible();
  });

test('a station picked by keyboard is the one that all is told of', async ({ page }) => {
  await open(page, 'place');
  const gannet = panel(page).getByRole('button', { name: 'Radio Gannet' });
  await gannet.focus();
  await page.keyboard.press('Enter');
  await expect(gannet).toHaveAttribute('aria-pressed', 'true');
  await expect(verdict(page)).toContainText('Radio Gannet');
  await expect(panel(page).getByRole('heading', { name: 'How the field of Radio Gannet comes about' })).toBeVisible();
  // and by a click in the picture
  await panel(page).locator('text[data-station="0"]').first().click();
  await expect(verdict(page)).toContainText('Fen Talk');
});

test('the ground between the mast and here is drawn where its heights are given', async ({ page }) => {
  await open(page, 'place');
  await expect(panel(page)).toContainText('No heights are given between Fen Talk and here');
  const heights = (name: string, text: string) =>
    page.getByLabel('table of heights to take').setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
  // a table that goes back and forth is not taken
  await heights('wrong.csv', 'distance (km);height (m)\n0;12\n2.6;150\n1.2;8\n');
  await expect(panel(page)).toContainText('Line 4');
  await expect(panel(page)).toContainText('What is known of Fen Talk is as it was');
  await heights('hill.csv', 'distance (km);height (m)\n0;12\n1.2;150\n2.6;8\n');
  await expect(panel(page)).toContainText('Taken from hill.csv: 3 heights over 2.6 km');
  const profile = panel(page).locator('svg.earshot-drawing', { hasText: 'From Fen Talk to here' });
  await expect(profile.locator('polyline[data-ground="surface"]')).toHaveCount(1);
  await expect(panel(page).getByRole('heading', { name: 'How the field of Fen Talk comes about' })).toBeVisible();
  // the hill costs something, and the step that says so is there
  await expect(panel(page).getByRole('row', { name: /^at your aerial .* terrain/ })).toBeVisible();
});

test('stations go out as a table and come in again as they were', async ({ page }) => {
  await open(page, 'place');
  const first = await savedStations(page);
  // head and values as the example file has them
  expect(first.split('\r\n').slice(0, 2)).toEqual([
    'name,frequency,power,polarisation,mast height,distance,bearing,stereo,programme',
    'Fen Talk,99.2 MHz,8 kW,horizontal,110 m,2.6 km,110 deg,no,speech',
  ]);
  await take(page, 'stations.csv', first);
  await expect(page.getByRole('dialog')).toContainText('Nothing would change');
  await page.getByRole('button', { name: 'Leave it as it is' }).click();

  // moved, one taken out, one new
  const [head, talk, , ...rest] = first.trimEnd().split('\r\n');
  const changed = [head, talk!.replace('2.6 km', '4 km'), ...rest, 'Newcomer,90.1 MHz,2 kW,vertical,80 m,7 km,NNE,yes,music'].join('\r\n');
  await take(page, 'changed.csv', changed);
  const dialog = page.getByRole('dialog');
  await expect(dialog).toContainText('distance: 2.6 km becomes 4 km');
  await expect(dialog).toContainText('Newcomer: new');
  await expect(dialog).not.toContainText('Radio Gannet');
  await dialog.getByRole('checkbox').check();
  await expect(dialog).toContainText('Radio Gannet: taken out');
  await dialog.getByRole('button', { name: 'Take them' }).click();
  await expect(panel(page).getByRole('button', { name: 'Newcomer', exact: true })).toBeVisible();
  await expect(panel(page).getByRole('button', { name: 'Radio Gannet', exact: true })).toHaveCount(0);
  // the place is the set's own now, and says what the table said
  await expect(panel(page)).not.toContainText('This place is in the file');
  expect((await savedStations(page)).trimEnd()).toBe(changed);
  // one step, taken back at once
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(panel(page)).toContainText('This place is in the file fenmarket.json');
  expect(await savedStations(page)).toBe(first);
});

test('a table that cannot be used leaves all as it was, and says line, column and why', async ({ page }) => {
  await open(page, 'place');
  const before = await savedStations(page);
  for (const [text, where] of [
    ['name,frequency\nFen Talk,99.2 MHz\nLantern,high', 'Line 3, column 9'],
    ['name,frequency\nFen Talk,99.2 GHz', 'Line 2, column 10'],
    ['name,distance\n"Fen Talk,3 km', 'Line 2, column 1'],
  ] as const) {
    await take(page, 'bad.csv', text);
    const dialog = page.getByRole('dialog');
    await expect(dialog).toContainText('bad.csv cannot be taken');
    await expect(dialog).toContainText(where);
    await expect(dialog.getByRole('button', { name: 'Take them' })).toHaveCount(0);
    await dialog.getByRole('button', { name: 'Leave it as it is' }).click();
    await expect(dialog).toHaveCount(0);
  }
  expect(await savedStations(page)).toBe(before);
  await expect(page.getByRole('button', { name: 'Undo' })).toBeDisabled();
});

test('the aerial is turned by keyboard and by hand', async ({ page }) => {
  await open(page, 'aerial');
  const space = page.getByRole('application', { name: /aerial in space/ });
  const wire = space.locator('line[data-wire="0"]');
  const ends = async (): Promise<string> => wire.evaluate((e) => ['x1', 'y1', 'x2', 'y2'].map((k) => e.getAttribute(k)).join(' '));
  const start = await ends();
  await space.focus();
  for (let i = 0; i < 5; i++) await page.keyboard.press('ArrowRight');
  await expect(panel(page)).toContainText('Looking 050°, 22° down');
  const turned = await ends();
  expect(turned).not.toBe(start);
  await page.keyboard.press('Home');
  await expect(panel(page)).toContainText('Looking 025°, 22° down');
  expect(await ends()).toBe(start);
  const box = (await space.locator('svg').boundingBox())!;
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 60, box.y + box.height / 2, { steps: 4 });
  await page.mouse.up();
  expect(await ends()).not.toBe(start);
  // straight from above and level, a level wire is a line across its broadside of 110 degrees: it runs towards 020
  await page.getByRole('button', { name: 'from above' }).click();
  const [x1, y1, x2, y2] = (await ends()).split(' ').map(Number) as [number, number, number, number];
  expect(Math.abs((x2 - x1) / (y2 - y1))).toBeCloseTo(Math.tan((20 * Math.PI) / 180), 2);
});

test('a louder room takes from what is understood', async ({ page }) => {
  await open(page, 'ear');
  const index = panel(page).locator('strong.sii');
  const before = Number(await index.textContent());
  expect(before).toBeGreaterThan(0.3);
  await panel(page).getByRole('textbox', { name: 'room' }).fill('60 dB(A)');
  await page.keyboard.press('Tab');
  await expect.poll(async () => Number(await index.textContent())).toBeLessThan(before - 0.1);
});
