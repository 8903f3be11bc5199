import type { TankDescription, VariableCapacitor } from '#engine';
import { writeForPeople } from '#units';
import type { Change, Shelf, Situation } from './situation.ts';

export type Coupling = NonNullable<TankDescription['aerialCoupling']>;

/** Turns to the nearest quarter that can be soldered, within the coil. */
export const quarter = (turns: number, most: number): number => Math.min(most, Math.max(0.25, Math.round(turns * 4) / 4));

/** To a tenth of a millimetre, as wire is sold. */
const tenth = (length: number): number => Math.floor(length * 1e4 + 1e-6) / 1e4;

/** How many times as large or small a capacitor may be and still be meant for the same band: a medium-wave gang is no trimmer, whatever its leads would tune to. */
const SAME_BAND = 4;
const ofThisKind = (a: VariableCapacitor, b: VariableCapacitor): boolean => Math.abs(Math.log(a.maximum / b.maximum)) < Math.log(SAME_BAND);

/** What can be done to the tuned circuit, with the capacitors on the shelf. */
export function tankChanges(s: Situation, shelf: Shelf): Change[] {
  const out: Change[] = [];
  const { tank } = s.set;
  const put = (key: string, words: string, next: Partial<TankDescription>): void => {
    out.push({ key, words, situation: { ...s, set: { ...s.set, tank: { ...tank, ...next } } } });
  };
  const { coil } = tank;
  if (coil.kind === 'geometry') {
    const thicker = tenth(Math.min(1.5 * coil.wireDiameter, 0.75 * coil.pitch));
    if (thicker > 1.1 * coil.wireDiameter)
      put('tank.wire', `wind it with ${(thicker * 1e3).toFixed(1)} mm wire`, { coil: { ...coil, wireDiameter: thicker } });
    if (coil.surfaceFactor > 1.05) put('tank.bright', 'use bright wire', { coil: { ...coil, surfaceFactor: 1 } });
    if (coil.leadLength + tank.wiring.length > 0.01)
      put('tank.leads', 'halve the leads', {
        coil: { ...coil, leadLength: coil.leadLength / 2 },
        wiring: { ...tank.wiring, length: tank.wiring.length / 2 },
      });
    for (const turns of [-1, -0.5, 0.5, 1])
      if (coil.turns + turns >= 0.75)
        put(`tank.turns${turns}`, `${turns > 0 ? 'add' : 'take off'} ${Math.abs(turns) === 1 ? 'a turn' : 'half a turn'}`, {
          coil: { ...coil, turns: coil.turns + turns },
          ...fitted(tank, coil.turns + turns),
        });
    for (const [factor, word] of [
      [1.25, 'stretch'],
      [0.8, 'squeeze'],
    ] as const)
      if (coil.turns > 1 && coil.pitch * factor > 1.1 * coil.wireDiameter)
        put(`tank.${word}`, `${word} the coil to ${(coil.pitch * factor * coil.turns * 1e3).toFixed(0)} mm`, {
          coil: { ...coil, pitch: coil.pitch * factor },
        });
  }
  if (tank.joints.resistance > 1e-3) put('tank.joints', 'solder the joints bright', { joints: { ...tank.joints, resistance: 0.5e-3 } });
  for (const [name, capacitor] of Object.entries(shelf.capacitors))
    if (ofThisKind(capacitor, tank.capacitor)) put(`tank.capacitor.${name}`, `tune with the capacitor "${name}"`, { capacitor });
  const turns = tank.coil.turns;
  for (const which of ['aerialCoupling', 'detectorCoupling'] as const) {
    const coupling = tank[which];
    if (coupling === undefined) continue;
    const who = which === 'aerialCoupling' ? 'aerial' : 'detector';
    for (const [more, next] of neighbours(coupling, turns))
      put(`tank.${who}.${more ? 'tighter' : 'looser'}`, couplingWords(who, next), { [which]: next });
  }
  return out;
}

/** Taps that would fall off a shorter coil move down with it. */
function fitted(tank: TankDescription, turns: number): Partial<TankDescription> {
  const within = <T extends Coupling>(c: T): T => (c.kind === 'tap' && c.turns > turns ? { ...c, turns } : c);
  return {
    ...(tank.aerialCoupling ? { aerialCoupling: within(tank.aerialCoupling) } : {}),
    detectorCoupling: within(tank.detectorCoupling),
  };
}

/** Steps tighter (true) and looser. */
export function neighbours(c: Coupling, turns: number): [boolean, Coupling][] {
  switch (c.kind) {
    case 'direct':
      return [[false, { kind: 'tap', turns: quarter(0.6 * turns, turns) }]];
    case 'tap': {
      const up = quarter(Math.max(c.turns * 1.4, c.turns + 0.25), turns);
      const down = quarter(Math.min(c.turns / 1.4, c.turns - 0.25), turns);
      return [
        ...(up > c.turns ? [[true, { ...c, turns: up }] as [boolean, Coupling]] : []),
        ...(down < c.turns ? [[false, { ...c, turns: down }] as [boolean, Coupling]] : []),
      ];
    }
    case 'link':
      return [
        [true, { ...c, turns: c.turns + 1 }],
        ...(c.turns >= 2 ? [[false, { ...c, turns: c.turns - 1 }] as [boolean, Coupling]] : []),
        [false, { ...c, gap: c.gap + 3e-3 }],
        ...(c.gap >= 3e-3 ? [[true, { ...c, gap: c.gap - 3e-3 }] as [boolean, Coupling]] : []),
      ];
    case 'series-capacitor':
      return [
        [true, { ...c, capacitance: 1.6 * c.capacitance }],
        [false, { ...c, capacitance: c.capacitance / 1.6 }],
      ];
  }
}

export function couplingWords(who: string, c: Coupling): string {
  switch (c.kind) {
    case 'direct':
      return `join the ${who} across the whole coil`;
    case 'tap':
      return `move the ${who} tap to ${c.turns} turns`;
    case 'link':
      return `give the ${who} link ${c.turns} ${c.turns === 1 ? 'turn' : 'turns'}, ${(c.gap * 1e3).toFixed(0)} mm from the coil`;
    case 'series-capacitor':
      return `couple the ${who} with ${writeForPeople(c.capacitance, 'capacitance', 2)}`;
  }
}
