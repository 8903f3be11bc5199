import { expect, test } from './app.ts';

test('opens without a network after one visit, with the files that come along', async ({ page, context }) => {
  await page.goto('/');
  await page.evaluate(() => navigator.serviceWorker.ready);
  await expect.poll(() => page.evaluate(() => navigator.serviceWorker.controller !== null)).toBe(true);
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  // every file of the build, as the worker has them listed
  const kept = await page.evaluate(async () => {
    const names = await caches.keys();
    const requests = await (await caches.open(names[0] as string)).keys();
    const answers = await Promise.all(requests.map(async (r) => ({ url: r.url, size: (await (await fetch(r.url)).blob()).size })));
    return { names, answers };
  });
  expect(kept.names).toHaveLength(1);
  expect(kept.answers.filter(({ url }) => url.endsWith('.json')).length).toBeGreaterThanOrEqual(9);
  expect(kept.answers.find(({ url }) => url.endsWith('.wav'))?.size).toBeGreaterThan(300_000);
  for (const { size } of kept.answers) expect(size).toBeGreaterThan(0);
});
