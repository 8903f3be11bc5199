import { expect, test } from './app.ts';
import { verdict } from './bench.ts';

test('the drawer: what is ticked, typed and added is in the set file; complaints in place; undo', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  const tab = (name: string) => page.getByRole('tab', { name, exact: true });
  await tab('drawer').click();
  await page.getByRole('button', { name: 'start empty' }).click();
  const summary = page.getByRole('status', { name: 'what the drawer holds' });
  await expect(summary).toHaveText('Nothing is in the drawer yet.');
  await page.getByLabel(/Small air variable, 20 pF/).check();
  await page.getByLabel('value to add to resistors').fill('100 k, 100 k, 1 M');
  await page.keyboard.press('Enter');
  await page.getByRole('combobox', { name: 'add a wire' }).selectOption('enamelled-copper-0.5mm');
  const length = page.getByLabel('how much, enamelled-copper-0.5mm');
  await length.fill('25 apples');
  await length.blur();
  await expect(page.getByText(/apples/).first()).toBeVisible();
  await expect(length).toHaveValue('25 apples');
  await length.fill('25 m');
  await length.blur();
  await expect(page.getByText(/apples/)).toHaveCount(0);
  await page.getByRole('button', { name: 'add a detector of your own' }).click();
  const name = page.getByLabel('name', { exact: true }).last();
  await name.fill('from the old radio');
  await name.blur();
  await page.getByRole('textbox', { name: 'saturation current' }).fill('2 uA');
  await page.getByRole('textbox', { name: 'saturation current' }).blur();
  await page.getByRole('button', { name: 'add a choke' }).click();
  const inductance = page.getByLabel('inductance, choke 5 H');
  await inductance.fill('8 H');
  await inductance.blur();
  await expect(summary).toHaveText('In the drawer: 1 detector, 1 variable capacitor, 1 wire, 3 resistors and 1 choke.');
  await tab('file').click();
  const written = JSON.parse(await page.getByLabel('the set file').inputValue()) as { drawer: unknown };
  expect(written.drawer).toEqual({
    fromLibrary: ['air-variable-20'],
    resistors: ['100 k', '100 k', '1 M'],
    wires: {
      'enamelled-copper-0.5mm': {
        title: 'Enamelled copper, 0.5 mm',
        values: { wireDiameter: '0.5 mm', metal: 'copper', surfaceFactor: 1 },
        tapEvery: 1,
        length: '25 m',
      },
    },
    chokes: [{ title: 'choke', inductance: '8 H', resistance: '300 ohm' }],
    detectors: { 'from the old radio': { values: { kind: 'junction', saturationCurrent: '2 uA', junctionCapacitance: '0.5 pF' } } },
  });
  await tab('drawer').click();
  for (let k = 0; k < 5; k++) await page.getByRole('button', { name: 'Undo' }).click();
  await expect(summary).toHaveText('In the drawer: 1 variable capacitor, 1 wire and 3 resistors.');
});

test('a search: cards while it runs and whatever view is open, the front by keyboard, on the bench and back, outdated but kept', async ({
  page,
}) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  const tab = (name: string) => page.getByRole('tab', { name, exact: true });
  await tab('find').click();
  await page.getByRole('button', { name: 'fill the drawer' }).click();
  await page.getByRole('button', { name: /demo drawer/ }).click();
  await page.getByRole('button', { name: 'find sets of these parts' }).click();
  await page.getByRole('button', { name: 'start', exact: true }).click();
  const card = page.getByRole('article', { name: 'Found 1' });
  await expect(card).toBeVisible();
  const tried = async (): Promise<number> => Number.parseInt((await page.getByText(/sets tried, seed 1/).textContent())!, 10);
  const before = await tried();
  await tab('ear').click();
  await page.waitForTimeout(700);
  await tab('find').click();
  // so many that some set of the front has no number
  await expect.poll(tried, { timeout: 60_000 }).toBeGreaterThan(before + 600);
  await page.getByRole('button', { name: 'stop', exact: true }).click();
  await expect(page.getByText('Stopped: this is the best so far.')).toBeVisible();
  await expect(card).toContainText('As built by hand of such parts');

  const walk = page.getByRole('slider', { name: /walk along the dots/ });
  await walk.focus();
  await page.keyboard.press('End');
  await expect(walk).toHaveAttribute('aria-valuetext', /dB over what the ear needs, distortion \d+ dB below the programme/);
  for (let k = 0; k < 100 && (await walk.getAttribute('aria-valuetext'))!.startsWith('number'); k++) await page.keyboard.press('ArrowLeft');
  await page.getByRole('button', { name: 'show this set' }).click();
  await expect(page.getByRole('article', { name: 'Picked a' })).toContainText('aerial');

  const sentence = (await card.locator('.card-sentence').textContent())!;
  await expect(page.getByRole('status', { name: 'best so far' })).toHaveText(sentence);
  const own = (await verdict(page).textContent())!;
  await page.getByRole('button', { name: 'put Found 1 on the bench' }).click();
  await expect(verdict(page)).toContainText(sentence.replace(/\.$/, ''));
  await expect(page.getByText(/have changed since/)).toHaveCount(0);
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(verdict(page)).toContainText(own.split(';')[0]!);

  await tab('drawer').click();
  await page.getByLabel(/Crystal earplug/).uncheck();
  await tab('find').click();
  await expect(page.getByText(/Place or drawer have changed since/)).toBeVisible();
  await expect(card).toBeVisible();
});

test('a band that no dial covers: what is typed wrong is told in place, and what stood in the way when nothing is found', async ({
  page,
}) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.getByRole('tab', { name: 'drawer', exact: true }).click();
  await page.getByRole('button', { name: /demo drawer/ }).click();
  await page.getByRole('button', { name: 'find sets of these parts' }).click();
  const [from, to] = [page.getByLabel('from', { exact: true }), page.getByLabel('to', { exact: true })];
  const start = page.getByRole('button', { name: 'start', exact: true });
  await from.fill('300 MHz');
  await to.fill('30 MHz');
  await to.blur();
  await expect(page.getByText(/give the lower end first/)).toBeVisible();
  await expect(start).toBeDisabled();
  await from.fill('30 MHz');
  await to.fill('300 MHz');
  await to.blur();
  await start.click();
  await expect(page.getByText(/\d{2,} sets tried/)).toBeVisible();
  await page.getByRole('button', { name: 'stop', exact: true }).click();
  await expect(page.getByRole('status', { name: 'best so far' })).toHaveText('No set of this drawer keeps to the limits here.');
  await expect(page.getByRole('list', { name: 'why nothing was found' })).toContainText('No set covers the band to its end at');
});
