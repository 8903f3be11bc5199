import type { DetectorCurves } from '#jobs';
import { formatFigure } from '#units';

const volts = (v: number): string => formatFigure(v, 'V', 3);

/** Where the station works the detector, between what it tends to for weak signals and for strong ones. */
export function workingSentence({ point, transfer }: DetectorCurves): string {
  if (!point) return 'The dial does not reach this station: nothing works the detector.';
  const { amplitude, output } = point;
  const near = transfer.amplitude.reduce(
    (best, a, i) => (Math.abs(a - amplitude) < Math.abs(transfer.amplitude[best]! - amplitude) ? i : best),
    0,
  );
  const weak = Math.abs(transfer.output[near]! / transfer.squareLaw[near]!);
  const met = `This station puts ${volts(amplitude)} peak across it, and ${volts(output)} comes out.`;
  if (weak > 0.7)
    return `${met} That is on the square law: half the signal gives a quarter of the output, which is why weak stations fall away so fast.`;
  if (Math.abs(output) > 0.7 * amplitude) return `${met} That is nearly the peak: half the signal gives half the output.`;
  return `${met} That is between the square law of weak signals and the peak that strong ones come to.`;
}
