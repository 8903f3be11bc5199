import type { Page } from '@playwright/test';

/** The verdict on the picked station. */
export const verdict = (page: Page) => page.getByRole('status', { name: 'verdict' });

/** Level of what goes to the loudspeaker over some time [dB re full scale], from the audio graph itself. */
export async function heardLevel(page: Page, milliseconds: number): Promise<number> {
  return page.evaluate(async (ms) => {
    const outlet = (globalThis as unknown as { earshotOutlet: () => AudioNode }).earshotOutlet();
    const analyser = new AnalyserNode(outlet.context, { fftSize: 2048 });
    outlet.connect(analyser);
    const block = new Float32Array(analyser.fftSize);
    let sum = 0;
    let count = 0;
    const end = performance.now() + ms;
    while (performance.now() < end) {
      await new Promise((resolve) => setTimeout(resolve, 45));
      analyser.getFloatTimeDomainData(block);
      for (const x of block) sum += x * x;
      count += block.length;
    }
    outlet.disconnect(analyser);
    return 10 * Math.log10(sum / count + 1e-20);
  }, milliseconds);
}
