import { expect, test } from './app.ts';
import { verdict } from './bench.ts';

const set = (name: string): string =>
  JSON.stringify({
    version: 1,
    name,
    set: { file: 'dipole-and-small-coil.json' },
    place: { file: 'fenmarket.json' },
  });

test('files: a good one is opened with those beside it, a broken one changes nothing and says why', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  const input = page.getByLabel('set files to open');
  await input.setInputFiles({ name: 'broken.json', mimeType: 'application/json', buffer: Buffer.from('{"version": 1, "tank": ') });
  await expect(page.getByText(/broken\.json was not opened/)).toBeVisible();
  await expect(page.getByText('Dipole and small coil').first()).toBeVisible();
  await input.setInputFiles({ name: 'mine.json', mimeType: 'application/json', buffer: Buffer.from(set('The set by the window')) });
  await expect(page.getByText('The set by the window').first()).toBeVisible();
  await expect(verdict(page)).toContainText('Fen Talk');
  // faults of the set are told with their path, and the last verdict stays
  await input.setInputFiles({
    name: 'faulty.json',
    mimeType: 'application/json',
    buffer: Buffer.from(JSON.stringify({ ...JSON.parse(set('Faulty')), detector: { part: 'no-such-part' } })),
  });
  await expect(page.getByRole('alert')).toContainText('detector');
  await expect(verdict(page)).toContainText('Fen Talk');
  await page.getByRole('button', { name: 'Undo' }).click();
  await expect(page.getByRole('alert')).toHaveCount(0);
});

test('a link carries the set; a link that was tampered with is refused and changes nothing', async ({ page, context }) => {
  await context.grantPermissions(['clipboard-read', 'clipboard-write']);
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.getByLabel('open an example').selectOption('loop-by-the-mast.json');
  await expect(page.getByText(/loop/i).first()).toBeVisible();
  await page.getByRole('button', { name: 'Share' }).click();
  await expect(page.getByText(/link to this set is on the clipboard/i)).toBeVisible();
  const link = await page.evaluate(() => navigator.clipboard.readText());
  const name = await page.locator('.where strong').textContent();

  const other = await context.newPage();
  await other.goto(link);
  await expect(other.locator('.where strong')).toHaveText(name!);
  await other.goto(`${link.slice(0, -20)}AAAAAAAA`);
  await other.reload();
  await expect(other.getByText(/The link cannot be used/)).toBeVisible();
  await expect(other.locator('.where strong')).toHaveText(name!);
});

test('two tabs do not write over each other: the person is asked', async ({ page, context }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  const rename = async (p: typeof page, to: string): Promise<void> => {
    await p.getByRole('tab', { name: 'file' }).click();
    const text = p.getByRole('textbox', { name: 'the set file' });
    const now = await text.inputValue();
    await text.fill(JSON.stringify({ ...JSON.parse(now), name: to }));
    await p.getByRole('button', { name: 'take it' }).click();
  };
  await rename(page, 'first');
  await page.waitForTimeout(1500);
  const other = await context.newPage();
  await other.goto('/');
  await expect(other.locator('.where strong')).toHaveText('first');
  // the first tab has changes of its own: what the second saves is not taken over without a word
  await rename(other, 'from the second tab');
  await expect(page.getByText(/changed in another tab as well/)).toBeVisible();
  await expect(page.locator('.where strong')).toHaveText('first');
  await page.getByRole('button', { name: 'keep mine' }).click();
  await expect(page.getByText(/changed in another tab as well/)).toHaveCount(0);
});

test('where the browser keeps nothing the work goes on, and the person is told', async ({ page }) => {
  await page.addInitScript(() => {
    Object.defineProperty(globalThis, 'indexedDB', {
      get() {
        throw new DOMException('refused', 'SecurityError');
      },
    });
  });
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await expect(page.getByText(/kept in this tab only/)).toBeVisible();
});

test('a thread that is killed is started anew, and nothing is lost', async ({ page }) => {
  await page.addInitScript(() => {
    const threads: Worker[] = [];
    globalThis.Worker = class extends Worker {
      constructor(address: string | URL, options?: WorkerOptions) {
        super(address, options);
        threads.push(this);
      }
    };
    Object.assign(globalThis, {
      killThreads: () => {
        for (const thread of threads) {
          thread.terminate();
          thread.dispatchEvent(new ErrorEvent('error', { message: 'killed' }));
        }
      },
    });
  });
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.evaluate(() => (globalThis as unknown as { killThreads: () => void }).killThreads());
  await page.getByRole('combobox', { name: 'station' }).selectOption({ index: 2 });
  await expect(verdict(page)).toContainText('Lantern');
  // once more while it is at work
  await page.getByRole('combobox', { name: 'station' }).selectOption({ index: 1 });
  await page.evaluate(() => (globalThis as unknown as { killThreads: () => void }).killThreads());
  await expect(verdict(page)).toContainText('Radio Gannet');
  await expect(page.getByRole('alert')).toHaveCount(0);
});
