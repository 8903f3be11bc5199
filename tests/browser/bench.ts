import type { Page } from '@playwright/test';

/** The verdict on the picked station. */
export const verdict = (page: Page) => page.getByRole('status', { name: 'verdict' });

/**
 * Level of what goes to the loudspeaker over some time [dB re full scale], from the audio graph itself.
 *
 * @param tone - only the line of this frequency [Hz]: on the carrier a slope gives the second harmonic alone, which is no quieter by ear
 */
export async function heardLevel(page: Page, milliseconds: number, tone: number | null = null): Promise<number> {
  return page.evaluate(
    async ([ms, line]) => {
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
        if (line === null) for (const x of block) sum += x * x;
        else {
          let [re, im] = [0, 0];
          block.forEach((x, n) => {
            const angle = (2 * Math.PI * line * n) / outlet.context.sampleRate;
            // a raised cosine keeps the harmonics out; its mean is a half
            const weight = 1 - Math.cos((2 * Math.PI * n) / block.length);
            re += weight * x * Math.cos(angle);
            im += weight * x * Math.sin(angle);
          });
          sum += (2 * (re * re + im * im)) / block.length;
        }
        count += block.length;
      }
      outlet.disconnect(analyser);
      return 10 * Math.log10(sum / count + 1e-20);
    },
    [milliseconds, tone] as const,
  );
}
