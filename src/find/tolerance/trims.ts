import type { SetDescription } from '#engine';
import { Bench, type Built, type Meant } from './built.ts';

/** Something to do to a finished set, and what it does. */
export interface Trim {
  /** scatters it makes good, by the beginning of their keys */
  readonly mends: readonly string[];
  /** `squeeze the winding by 1 mm` */
  readonly words: string;
  /** by how much the dial of the whole set moves at one place, aerial and detector joined [Hz] */
  readonly moves: number;
  /** by how much the station becomes louder, the dial set afresh [dB]; null where it is not on the dial before or after */
  readonly louder: number | null;
}

/** The change of length that fingers can make for sure [m]. */
const MILLIMETRE = 1e-3;
/** What moves the dial and is mended at the coil. */
const DIAL = [
  'tank.coil',
  'tank.wiring',
  'tank.strayCapacitance',
  'tank.capacitor.m',
  'tank.capacitor.lead',
  ...['junctionCapacitance', 'drainCapacitance', 'gateCapacitance', 'capacitance'].map((key) => `detector.${key}`),
];
const QUARTER = 0.25;

/** How to trim a set after it was built, each way tried by evaluating the trimmed set anew. */
export function trims(meant: Meant): readonly Trim[] {
  const bench = new Bench(meant);
  const { set } = meant;
  const { tank } = set;
  const { coil } = tank;
  const before = bench.build([], []);
  const out: Trim[] = [];
  const put = (mends: readonly string[], words: string, change: Partial<SetDescription['tank']>): void => {
    const after = as(bench, { ...set, tank: { ...tank, ...change } });
    if (before.frequency === null || after.frequency === null) return;
    out.push({
      mends,
      words,
      moves: after.frequency - before.frequency,
      louder: before.headroom === null || after.headroom === null ? null : after.headroom - before.headroom,
    });
  };
  if (coil.kind === 'geometry') {
    const by = MILLIMETRE / coil.turns;
    if (coil.turns > 1 && coil.pitch - by > coil.wireDiameter)
      put(DIAL, 'squeeze the winding by 1 mm', { coil: { ...coil, pitch: coil.pitch - by } });
    if (coil.turns > 1) put(DIAL, 'stretch the winding by 1 mm', { coil: { ...coil, pitch: coil.pitch + by } });
    put(DIAL, 'add half a turn', { coil: { ...coil, turns: coil.turns + 0.5 } });
    if (coil.turns >= 1.5 && taps(tank).every((t) => t <= coil.turns - 0.5))
      put(DIAL, 'take off half a turn', { coil: { ...coil, turns: coil.turns - 0.5 } });
  }
  put(DIAL, 'put 1 pF across the tank', { strayCapacitance: tank.strayCapacitance + 1e-12 });
  for (const [key, who] of [
    ['aerialCoupling', 'aerial'],
    ['detectorCoupling', 'detector'],
  ] as const) {
    const c = tank[key];
    if (c?.kind !== 'tap') continue;
    for (const [way, turns] of [
      ['up', c.turns + QUARTER],
      ['down', c.turns - QUARTER],
    ] as const)
      if (turns > 0 && turns < coil.turns)
        put([`tank.${key}`, 'detector.'], `move the ${who}'s tap a quarter turn ${way}`, { [key]: { ...c, turns } });
  }
  if (tank.joints.resistance > 0.5e-3) put(['tank.joints'], 'solder the joints bright', { joints: { ...tank.joints, resistance: 0.5e-3 } });
  return out;
}

const taps = (tank: SetDescription['tank']): number[] =>
  [tank.aerialCoupling, tank.detectorCoupling].flatMap((c) => (c?.kind === 'tap' ? [c.turns] : []));

const as = (bench: Bench, set: SetDescription): Built =>
  bench.build([{ key: '', label: '', extent: '', ofTheSet: true, apply: (draft) => ({ ...draft, set }) }], [0]);
