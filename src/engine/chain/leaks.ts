import { type DescribingFunction, MEAN_BY_AMPLITUDE } from '../detector/index.ts';
import { amplitudeRatio } from '../numeric/index.ts';
import type { Leak, RestPoint } from './levels.ts';
import { modulated } from './modulated.ts';
import type { OperatingPoint } from './operating-point.ts';
import type { Reception } from './receiver.ts';
import { radioHalf } from './rf-half.ts';

/** Carriers nearer than this beat at an audible frequency [Hz]. */
const AUDIBLE = 16_000;
/** Points of the slow turn of one carrier against the other over which the detector's answer is averaged. */
const TURN = 16;

/**
 * The other stations of the place, through the same set at the same angle.
 *
 * Two carriers together make an amplitude |A1 + A2 e^(j phi)| that turns at their difference; above the audible range only its mean counts. So
 * the answer to a small change of either amplitude is the mean over phi of the law's own slope: both sound side by side in
 * square law, and the stronger hushes the weaker in linear law, without a case for either. Each neighbour is taken alone with
 * the wanted station; the law shows the weaker carrier the mean of its chord and its tangent conductance.
 *
 * @param wanted - relative change of the wanted amplitude for one unit of its rms programme swing
 * @param swing - rms programme swing of a station [Hz or 1]
 */
export function leaks(
  reception: Reception,
  index: number,
  angle: number,
  rest: RestPoint,
  point: OperatingPoint,
  wanted: number,
  swing: (station: number) => number,
): Leak[] {
  const { receiver, signals } = reception;
  const law = receiver.detector.law;
  const out: Leak[] = [];
  const increment = (rest.radioConductance + point.fundamentalByAmplitude) / 2;
  const f1 = signals[index]!.received.station.frequency;
  signals.forEach((signal, k) => {
    if (k === index) return;
    const { station } = signal.received;
    const rf = radioHalf(receiver, signal, angle, f1);
    const carrier = modulated(rf, station.frequency, signal.emf, station.modulation);
    const a2 = carrier.amplitude / Math.hypot(1 + carrier.zRe * increment, carrier.zIm * increment);
    const moved = carrier.relativeSlope() * swing(k);
    const { byFirst, bySecond } = slopes(law, rest.amplitude, a2, rest.output);
    const ours = Math.abs(byFirst * rest.amplitude * wanted);
    const theirs = Math.abs(bySecond * a2 * moved);
    const beat = Math.abs(station.frequency - f1);
    out.push({
      station: station.name,
      radio: amplitudeRatio(a2, rest.amplitude),
      programme: amplitudeRatio(theirs, ours),
      whistle: beat > 0 && beat < AUDIBLE ? beat : null,
    });
  });
  return out;
}

/** Slopes of the mean current by either amplitude, averaged over the slow turn between them. */
function slopes(law: DescribingFunction, a1: number, a2: number, output: number): { byFirst: number; bySecond: number } {
  const buffer = new Float64Array(6);
  let byFirst = 0;
  let bySecond = 0;
  for (let k = 0; k < TURN; k++) {
    // half-step offset keeps the samples off the two points where the amplitudes may cancel exactly
    const c = Math.cos((2 * Math.PI * (k + 0.5)) / TURN);
    const a = Math.sqrt(Math.max(0, a1 * a1 + a2 * a2 + 2 * a1 * a2 * c));
    if (a === 0) continue;
    law.at(a, output, buffer);
    byFirst += (buffer[MEAN_BY_AMPLITUDE]! * (a1 + a2 * c)) / a / TURN;
    bySecond += (buffer[MEAN_BY_AMPLITUDE]! * (a2 + a1 * c)) / a / TURN;
  }
  return { byFirst, bySecond };
}
