import { type Arm, drawWay, jointsOf, stepped } from './arms.ts';
import { canBeBuilt } from './build.ts';
import type { Draws } from './chance.ts';
import { type Design, keyOf, LINK, PITCHES, SERIES, TAP } from './design.ts';
import { type Space, windowOf } from './space.ts';
import { linkCount } from './winding.ts';

/** Ways to change a design within its arm; each is one step of a search. */
export const MOVES = [
  'aerial',
  'joint',
  'at',
  'capacitor',
  'former',
  'wire',
  'turns',
  'pitch',
  'across',
  'detector',
  'tap',
  'earpiece',
  'transformer',
  'load',
  'bypass',
  'taps together',
  'detector and tap',
] as const;

/** Values of a list tried at one step, at most: the nearest in it, and some drawn by chance. */
const MOST = 8;
const NEAR = [-1, 1, -2, 2, -4, 4];

/** Designs next to one along one way, without itself, all of which can be built. */
export function neighboursOf(space: Space, arm: Arm, d: Design, move: number, draws: Draws): readonly Design[] {
  const own = keyOf(d);
  const seen = new Set([own]);
  return candidates(space, arm, d, MOVES[move]!, draws).filter((c) => {
    const key = keyOf(c);
    if (seen.has(key) || !canBeBuilt(space, c)) return false;
    seen.add(key);
    return true;
  });
}

function candidates(space: Space, arm: Arm, d: Design, move: (typeof MOVES)[number], draws: Draws): Design[] {
  const { stock } = space;
  const near = (value: number, from: number, to: number): number[] => NEAR.map((k) => value + k).filter((v) => v >= from && v <= to);
  /** all of a short list; of a long one its neighbours and some by chance */
  const others = (value: number, from: number, to: number): number[] => {
    const all = Array.from({ length: to - from + 1 }, (_, k) => from + k).filter((v) => v !== value);
    if (all.length <= MOST) return all;
    return [...new Set([...near(value, from, to), ...Array.from({ length: MOST - NEAR.length + 2 }, () => draws.oneOf(all))])];
  };
  switch (move) {
    case 'aerial':
      return others(d.aerial, arm.aerials[0], arm.aerials[1]).map((aerial) => ({ ...d, aerial }));
    case 'joint':
      return jointsOf(space, arm)
        .filter((joint) => joint !== d.joint)
        .flatMap((joint) => firstPlaces(space, d, joint, draws).map((at) => ({ ...d, joint, at })));
    case 'at':
      if (d.joint === TAP) return tapsFrom(space, d, d.at).map((at) => ({ ...d, at }));
      if (d.joint === LINK) return others(d.at, 0, linkCount(stock) - 1).map((at) => ({ ...d, at }));
      if (d.joint === SERIES) return others(d.at, 0, stock.fixedCapacitors.length - 1).map((at) => ({ ...d, at }));
      return [];
    case 'capacitor':
      return others(d.capacitor, 0, stock.capacitors.length - 1).flatMap((capacitor) => rewound(space, d, { capacitor }));
    case 'former':
      return others(d.former, 0, stock.formers.length - 1).flatMap((former) => rewound(space, d, { former }));
    case 'wire':
      return others(d.wire, 0, stock.wires.length - 1).flatMap((wire) => rewound(space, d, { wire }));
    case 'pitch':
      if (d.halves === 2) return [];
      return others(d.pitch, 0, PITCHES.length - 1).flatMap((pitch) => rewound(space, d, { pitch }));
    case 'across':
      return others(d.across, 0, stock.fixedCapacitors.length).flatMap((across) => rewound(space, d, { across }));
    case 'turns':
      return near(d.halves, 2, Number.POSITIVE_INFINITY).flatMap((halves) => [
        withTurns(space, d, halves, 1),
        withTurns(space, d, halves, halves / d.halves),
      ]);
    case 'detector':
      return others(d.detector, 0, stock.detectors.length - 1).map((detector) => ({ ...d, detector }));
    case 'tap':
      return [
        ...(d.tap === 0 ? [] : [{ ...d, tap: 0 }]),
        ...tapsFrom(space, d, d.tap === 0 ? 2 * d.halves : d.tap).map((tap) => ({ ...d, tap })),
      ];
    case 'earpiece':
      return others(d.earpiece, 0, stock.earpieces.length - 1).flatMap((earpiece) => withEarpiece(space, d, earpiece, draws));
    case 'transformer':
      return others(d.transformer, 0, stock.transformers.length).map((transformer) => withTransformer(space, d, transformer, draws));
    case 'load':
      return others(d.load, 0, stock.loads.length).map((load) => ({ ...d, load, transformer: load > 0 ? 0 : d.transformer }));
    case 'bypass':
      return others(d.bypass, 0, stock.fixedCapacitors.length).map((bypass) => ({ ...d, bypass }));
    case 'taps together':
      if (d.joint !== TAP || d.tap === 0) return [];
      return [0.7, 0.85, 1.2, 1.45].map((k) => ({
        ...d,
        at: stepped(space, d.wire, k * d.at, d.halves),
        tap: stepped(space, d.wire, k * d.tap, d.halves),
      }));
    case 'detector and tap':
      return others(d.detector, 0, stock.detectors.length - 1).flatMap((detector) =>
        [0, 0.3, 0.6].map((share) => ({ ...d, detector, tap: share === 0 ? 0 : stepped(space, d.wire, share * 2 * d.halves, d.halves) })),
      );
  }
}

/** Shares of a coil at which an aerial that joins it anew is tapped: low, where aerials of low impedance match, and further up. */
const FIRST_TAPS = [0.06, 0.15, 0.35];

/** Where an aerial that now joins in another way is tried. */
function firstPlaces(space: Space, d: Design, joint: number, draws: Draws): number[] {
  const some = (n: number): number[] => (n <= FIRST_TAPS.length ? [...Array(n).keys()] : FIRST_TAPS.map(() => draws.below(n)));
  if (joint === TAP) return FIRST_TAPS.map((share) => stepped(space, d.wire, Math.round(share * 2 * d.halves), d.halves));
  if (joint === LINK) return some(linkCount(space.stock));
  if (joint === SERIES) return some(space.stock.fixedCapacitors.length);
  return [0];
}

/** Places for a tap about one, a few steps and some octaves away. */
function tapsFrom(space: Space, d: Design, quarters: number): number[] {
  const step = stepped(space, d.wire, 1, d.halves);
  const places = [...NEAR.map((k) => quarters + k * step), quarters / 2, quarters * 2];
  return places.map((q) => stepped(space, d.wire, q, d.halves));
}

/** A coil changed otherwise, with the turns that stand at the same place in its new window, and next to it; taps keep their share. */
function rewound(space: Space, d: Design, change: Partial<Design>): Design[] {
  const next = { ...d, ...change };
  const windowFor = (x: Design, station?: number) => windowOf(space, x.former, x.wire, x.pitch, x.capacitor, x.across, station);
  const station = space.stations.find((k) => {
    const window = windowFor(d, k);
    return window !== null && d.halves >= window[0] && d.halves <= window[1];
  });
  const before = windowFor(d, station);
  const after = windowFor(next, station);
  if (!before || !after) return [];
  // windows are wide either way: their ends stand as the inductances do
  const share = Math.log(d.halves / before[0]) / Math.max(1e-9, Math.log(before[1] / before[0]));
  const middle = Math.round(after[0] * (after[1] / after[0]) ** share);
  return [...new Set([d.halves, middle - 1, middle, middle + 1])]
    .filter((halves) => halves >= 2)
    .map((halves) => withTurns(space, next, halves, halves / d.halves));
}

function withTurns(space: Space, d: Design, halves: number, scale: number): Design {
  return {
    ...d,
    halves,
    pitch: halves === 2 ? 0 : d.pitch,
    at: d.joint === TAP ? stepped(space, d.wire, d.at * scale, halves) : d.at,
    tap: d.tap === 0 ? 0 : stepped(space, d.wire, d.tap * scale, halves),
  };
}

/** Another transformer or none; what the direct current went through before then takes its place or gives it up. */
function withTransformer({ stock }: Space, d: Design, transformer: number, draws: Draws): Design {
  if (stock.earpieces[d.earpiece]!.part.kind !== 'piezo') return { ...d, transformer };
  return { ...d, transformer, load: transformer > 0 || stock.loads.length === 0 ? 0 : 1 + draws.below(stock.loads.length) };
}

/** Another earpiece with what it needs before it: a way for the direct current for a piezo; nothing, or some transformer, for magnetic phones. */
function withEarpiece(space: Space, d: Design, earpiece: number, draws: Draws): Design[] {
  const { stock } = space;
  if (stock.earpieces[earpiece]!.part.kind === 'piezo') {
    const drawn = { ...d, earpiece, ...drawWay(space, earpiece, draws) };
    return d.load > 0 ? [{ ...d, earpiece }, drawn] : [drawn];
  }
  const fitted = [
    0,
    ...(d.transformer > 0 ? [d.transformer] : []),
    ...(stock.transformers.length > 0 ? [1 + draws.below(stock.transformers.length)] : []),
  ];
  return [...new Set(fitted)].map((transformer) => ({ ...d, earpiece, transformer, load: 0 }));
}
