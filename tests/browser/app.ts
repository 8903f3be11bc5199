import { test as base } from '@playwright/test';

export { expect } from '@playwright/test';

/**
 * Every browser test starts from this: the app at `/`, and a test fails on any error in the console or uncaught in a page, on anything that the policy
 * for content refused, and on any request to another origin, whatever else it looks at.
 */
export const test = base.extend<{ watched: undefined; expectedErrors: RegExp[] }>({
  // biome-ignore lint/correctness/noEmptyPattern: the runner reads what a fixture needs from this pattern
  baseURL: async ({}, use) => use(`http://localhost:${process.env.EARSHOT_PORT}`),
  /** A test that provokes an error in the console adds what it expects. */
  // biome-ignore lint/correctness/noEmptyPattern: as above
  expectedErrors: async ({}, use) => use([]),
  watched: [
    async ({ context, baseURL, expectedErrors }, use) => {
      const faults: string[] = [];
      const own = new URL(baseURL as string).origin;
      context.on('console', (message) => {
        if (message.type() === 'error') faults.push(`console: ${message.text()} (${message.location().url})`);
      });
      context.on('weberror', (e) => faults.push(`uncaught: ${e.error().stack ?? e.error().message}`));
      context.on('request', (request) => {
        const url = new URL(request.url());
        if (url.origin !== own) faults.push(`request to another origin: ${url.href}`);
      });
      await use(undefined);
      const unexpected = faults.filter((fault) => !expectedErrors.some((pattern) => pattern.test(fault)));
      if (unexpected.length > 0) throw new Error(unexpected.join('\n'));
    },
    { auto: true },
  ],
});
