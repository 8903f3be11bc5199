import { appendFileSync, cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { serveFolder } from '../../src/serve/serve-folder.ts';
import { test as base, expect } from './app.ts';
import { buildApp } from './build-app.ts';

/** A small app with a worker, an audio worklet and a part that is loaded later, built in two versions as the app is, on a sub-path of a host. */
interface Host {
  readonly address: string;
  readonly folder: string;
  /** Has the host hold this version, and nothing of another. */
  put(version: 'one' | 'two'): void;
}

const test = base.extend<{ host: Host }, { builds: string }>({
  builds: [
    // biome-ignore lint/correctness/noEmptyPattern: the runner reads what a fixture needs from this pattern
    async ({}, use) => {
      const builds = mkdtempSync(join(tmpdir(), 'earshot-builds-'));
      for (const version of ['one', 'two'])
        buildApp(join(builds, version), 'tests/browser/bare-app/vite.config.ts', { VITE_BARE_VERSION: version });
      await use(builds);
      rmSync(builds, { recursive: true, force: true });
    },
    { scope: 'worker' },
  ],
  host: async ({ builds }, use) => {
    const root = mkdtempSync(join(tmpdir(), 'earshot-host-'));
    const folder = join(root, 'some/path');
    const put = (version: string): void => {
      rmSync(folder, { recursive: true, force: true });
      mkdirSync(folder, { recursive: true });
      cpSync(join(builds, version), folder, { recursive: true });
    };
    put('one');
    const served = await serveFolder(root, 0);
    await use({ address: `${served.address}some/path/`, folder, put });
    await served.close();
    rmSync(root, { recursive: true, force: true });
  },
  baseURL: async ({ host }, use) => use(host.address),
});

const isVersion = (page: Page, version: string) => expect(page.getByRole('heading')).toHaveText(`version ${version}`);
const isVersionLater = async (page: Page, version: string): Promise<void> => {
  await page.getByRole('button').click();
  await expect(page.locator('#later')).toHaveText(`later of ${version}`);
};
const isKept = (page: Page) => expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller?.state)).toBe('activated');
const cacheCount = (page: Page) => page.evaluate(async () => (await caches.keys()).length);
const lookForNew = (page: Page) => page.evaluate(async () => void (await (await navigator.serviceWorker.ready).update()));

test('workers and audio worklets run under the policy, from a sub-path, as files of their own', async ({ page, host }) => {
  await page.goto('');
  await expect(page.locator('#threads')).toHaveText('worker 5, worklet 0.5');
  const files = readdirSync(host.folder, { recursive: true, encoding: 'utf8' });
  for (const name of [/^assets\/adder\.worker-[\w-]+\.js$/, /^assets\/doubler\.worklet-[\w-]+\.js$/])
    expect(files.filter((f) => name.test(f))).toHaveLength(1);
  const code = files.filter((f) => f.endsWith('.js')).map((f) => readFileSync(join(host.folder, f), 'utf8'));
  for (const text of code) expect(text).not.toMatch(/data:[a-z]+\/|blob:|\beval\(|new Function/);
});

test('threads start without a network as well', async ({ page, context }) => {
  await page.goto('');
  await isKept(page);
  await context.setOffline(true);
  await page.reload();
  await expect(page.locator('#threads')).toHaveText('worker 5, worklet 0.5');
  await isVersionLater(page, 'one');
});

test('a newer version waits until the one in use is left; files of two are never mixed', async ({ page, context, host }) => {
  await page.goto('');
  await isKept(page);
  const second = await context.newPage();
  await second.goto(host.address);
  await isVersion(second, 'one');

  host.put('two');
  await second.reload();
  await isVersion(second, 'one');
  await lookForNew(second);
  await expect(second.locator('#news')).toHaveText('new version: true');
  // in the first window a part that was not loaded yet, and is no longer on the host
  await isVersionLater(page, 'one');
  await second.reload();
  await isVersion(second, 'one');
  await isVersionLater(second, 'one');

  await second.close();
  await page.reload();
  await isVersion(page, 'two');
  await isVersionLater(page, 'two');
  await expect(page.locator('#threads')).toHaveText('worker 5, worklet 0.5');
  await expect.poll(() => cacheCount(page)).toBe(1);
  await expect(page.locator('#news')).toHaveText('new version: false');
});

test('a host that is just being filled gives no half version', async ({ page, context, host, expectedErrors }) => {
  expectedErrors.push(/integrity|Failed to load resource|Failed to fetch|ServiceWorker/i);
  await page.goto('');
  await isKept(page);
  host.put('two');
  const part = readdirSync(join(host.folder, 'assets')).find((f) => /^later-.*\.js$/.test(f)) as string;
  appendFileSync(join(host.folder, 'assets', part), ' ');
  await lookForNew(page);
  await expect
    .poll(() =>
      page.evaluate(async () => {
        const r = await navigator.serviceWorker.getRegistration();
        return [r?.installing, r?.waiting].filter(Boolean).length;
      }),
    )
    .toBe(0);
  await page.reload();
  await isVersion(page, 'one');
  await context.setOffline(true);
  await page.reload();
  await isVersion(page, 'one');
  await isVersionLater(page, 'one');

  // and once it is filled, all is well
  await context.setOffline(false);
  host.put('two');
  await lookForNew(page);
  await expect(page.locator('#news')).toHaveText('new version: true');
  await page.reload();
  await isVersion(page, 'two');
});
