import { expect, test } from './app.ts';
import { verdict } from './bench.ts';

/** Figures of speed for the report; machines that others share make them worse, so none is required here. */
test('report: a slider moved to its figures redrawn, and what live listening takes', async ({ page }) => {
  await page.goto('/');
  await expect(verdict(page)).toContainText('Fen Talk is heard');
  await page.getByRole('tab', { name: 'tank', exact: true }).click();
  const slider = page.getByRole('slider', { name: 'lead length slider' });
  await expect(slider).toBeVisible();
  await expect(page.getByText('What would help, best first')).toBeVisible();
  const times = await slider.evaluate(async (input: HTMLInputElement) => {
    const path = document.querySelector('.path')!;
    const out: number[] = [];
    for (let k = 1; k <= 40; k++) {
      const began = performance.now();
      const redrawn = new Promise<number>((resolve) => {
        const observer = new MutationObserver(() => {
          observer.disconnect();
          requestAnimationFrame(() => resolve(performance.now() - began));
        });
        observer.observe(path, { subtree: true, characterData: true, childList: true, attributes: true });
      });
      input.value = String(4 * k * (k % 2 === 0 ? 1 : -1));
      input.dispatchEvent(new Event('input', { bubbles: true }));
      const late = new Promise<number>((resolve) => setTimeout(() => resolve(Number.NaN), 3000));
      const time = await Promise.race([redrawn, late]);
      if (!Number.isNaN(time)) out.push(time);
      await new Promise((resolve) => setTimeout(resolve, 120));
    }
    input.dispatchEvent(new Event('change', { bubbles: true }));
    return out;
  });
  expect(times.length).toBeGreaterThan(30);
  const sorted = times.toSorted((a, b) => a - b);
  const at = (share: number): string => `${sorted[Math.floor(share * (sorted.length - 1))]!.toFixed(0)} ms`;
  console.log(`slider to figures redrawn: median ${at(0.5)}, 95th percentile ${at(0.95)} (50 ms owed)`);

  await page.getByRole('button', { name: 'Listen', exact: true }).first().click();
  await expect(page.getByText(/The engine takes/)).toBeVisible();
  await page.waitForTimeout(4000);
  console.log(
    `live listening: ${await page
      .getByText(/The engine takes/)
      .first()
      .textContent()} (50 % owed)`,
  );
});
