import {
  assemble,
  bestDial,
  type DescribingFunction,
  type DetectorDescription,
  detectorModel,
  evaluate,
  type SetDescription,
  standAt,
} from '#engine';
import { listener, place, set, station } from '../tests/unit/chain/base-set.ts';
import { bruteAverage, CHANNEL, measured, SCHOTTKY } from '../tests/unit/detector/cycle.ts';

const out = new Float64Array(6);

/** Time of each of many calls [s]: the fastest of several passes, as others use the machine too. */
function each(calls: number, call: (k: number) => void, passes = 15): number {
  let best = Number.POSITIVE_INFINITY;
  for (let pass = 0; pass < passes; pass++) {
    const t = performance.now();
    for (let k = 0; k < calls; k++) call(k);
    best = Math.min(best, (performance.now() - t) / 1e3 / calls);
  }
  return best;
}

/** Working points as a modulated station makes them: amplitude to and fro by a fifth, output some n Vt below it. */
const amplitudeAt = (middle: number, k: number) => middle * (1 + 0.2 * Math.sin(k * 0.37));
const outputAt = (middle: number, k: number) => Math.max(0, middle - 0.2 * middle * Math.sin(k * 0.11) - 0.2);

const sweep = (law: DescribingFunction, middle: number) =>
  each(2000, (k) => {
    law.at(amplitudeAt(middle, k), outputAt(middle, k), out);
  });

/** The same points asked of a law for the first time, made anew for each pass. */
function cold(description: DetectorDescription, middle: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let pass = 0; pass < 5; pass++) {
    const { law } = detectorModel({ ...description });
    best = Math.min(
      best,
      each(2000, (k) => law.at(amplitudeAt(middle, k), outputAt(middle, k), out), 1),
    );
  }
  return best;
}

const LAWS: Readonly<Record<string, DetectorDescription>> = {
  'junction, 20 ohm': { ...SCHOTTKY, seriesResistance: 20 },
  'junction, 2 kohm': { ...SCHOTTKY, seriesResistance: 2000 },
  'channel, 50 ohm': { ...CHANNEL, transconductanceFactor: 1e-3, seriesResistance: 50 },
  'table, 10 mV': measured(0.01),
};

/** Looking up against the exact junction; a first visit against a look-up; and sets near a mast, cold and warm. */
export function run(): void {
  const ns = (s: number): string => `${(1e9 * s).toFixed(0)} ns`;
  const ms = (s: number): string => `${(1e3 * s).toFixed(2)} ms`;
  for (const middle of [0.03, 1, 5, 80]) {
    const exact = sweep(detectorModel(SCHOTTKY).law, middle);
    console.log(`swing of ${middle} V: exact junction ${ns(exact)}`);
    for (const [name, description] of Object.entries(LAWS)) {
      const { law } = detectorModel(description);
      const first = cold(description, middle);
      const warm = sweep(law, middle);
      const brute = each(3, (k) => void bruteAverage(law, amplitudeAt(middle, k), outputAt(middle, k)), 3);
      console.log(
        `  ${name.padEnd(18)} warm ${ns(warm).padStart(8)}  ${(warm / exact).toFixed(2)} of exact;  2000 points at first ${ms(2000 * first).padStart(9)}` +
          `  ${(first / warm).toFixed(1)} times warm;  4096 points of the law ${(brute / warm).toFixed(0)} times warm`,
      );
    }
  }
  for (const power of [10e3, 1e6, 100e6]) {
    const here = place(station({ power, position: { distance: 500, bearing: 0 } }));
    const fresh = (): SetDescription => ({ ...set, detector: { ...set.detector } });
    const stand = standAt(here, assemble(fresh(), listener));
    const dial = bestDial(stand, 0);
    if ('missing' in dial) throw new Error('the set of this benchmark should reach its station');
    const { angle } = dial.points[0]!;
    const warm = each(20, () => void evaluate(stand, 0, angle));
    const first = Array.from({ length: 7 }, () => standAt(here, assemble(fresh(), listener)));
    const one = each(7, (k) => void evaluate(first[k]!, 0, angle), 1);
    const again = Array.from({ length: 7 }, () => standAt(here, assemble(fresh(), listener)));
    const search = each(7, (k) => void bestDial(again[k]!, 0), 1);
    console.log(
      `a set at 500 m from ${power / 1e3} kW: evaluation ${ms(warm)} warm, ${ms(one)} with a new detector (${(one / warm).toFixed(1)} times);` +
        ` best dial ${ms(search)} with a new detector (${(search / warm).toFixed(0)} evaluations)`,
    );
  }
}
