import { amplitudeRatio, C } from '../numeric/index.ts';
import type { Leak, RestPoint } from './levels.ts';
import { type Modulated, modulated } from './modulated.ts';
import type { Reception } from './receiver.ts';
import { radioHalf } from './rf-half.ts';
import { TwoCarriers } from './two-carriers.ts';

/** Carriers nearer than this beat at an audible frequency [Hz]. */
const AUDIBLE = 16_000;

/**
 * The other stations of the place, through the same set at the same angle.
 *
 * Each neighbour is taken alone with the wanted station, both held against the detector together. How the mean current follows either
 * station's programme, in each other's presence, gives what leaks in; how the wanted one's compares with that of the wanted one alone
 * gives what the neighbour takes from it. In square law both sound side by side, in linear law the stronger hushes the weaker,
 * without a case for either.
 *
 * @param carrier - the wanted station at the detector, and `rest` the set at rest on it
 * @param swing - rms programme swing of a station [Hz or 1]
 */
export function leaks(
  reception: Reception,
  index: number,
  angle: number,
  rest: RestPoint,
  carrier: Modulated,
  swing: (station: number) => number,
): Leak[] {
  const { receiver, signals } = reception;
  const [direct, tone] = receiver.audio.harmonics;
  const two = new TwoCarriers(receiver.detector.law);
  const out: Leak[] = [];
  const f1 = signals[index]!.received.station.frequency;
  const divided = (conductance: number): number => C.abs(C.add(C.ONE, C.scale(tone!.load, conductance)));
  const alone = Math.abs(rest.sensitivity) / divided(rest.outputConductance);
  signals.forEach((signal, k) => {
    if (k === index) return;
    const { station } = signal.received;
    const other = modulated(radioHalf(receiver, signal, angle, f1), station.frequency, signal.emf, station.modulation);
    two.solve(carrier, other, rest, direct!.load.re);
    const ours = Math.abs(two.answer(carrier.misfitSlope(two.first, two.firstCurrent), 0));
    const theirs = Math.abs(two.answer(0, other.misfitSlope(two.second, two.secondCurrent)));
    const beat = Math.abs(station.frequency - f1);
    const heard = beat > 0 && beat < AUDIBLE;
    out.push({
      station: station.name,
      radio: amplitudeRatio(two.second, two.first),
      programme: amplitudeRatio(theirs * swing(k), ours * swing(index)),
      hush: alone > 0 ? amplitudeRatio(ours / divided(two.outputConductance), alone) : 0,
      whistle: heard ? beat : null,
      whistleCurrent: heard ? Math.abs(two.beatCurrent) : 0,
    });
  });
  return out;
}
