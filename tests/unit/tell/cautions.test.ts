import { expect, test } from 'vitest';
import { report, type SetDescription } from '#engine';
import { cautions } from '#tell';
import { listener, place, set, station } from '../chain/base-set.ts';

const told = (aerial: SetDescription['aerial'], power = 10e3): string => {
  const s = { ...set, aerial };
  return cautions(s, report(place(station({ power, mastHeight: 30, position: { distance: 500, bearing: 0 } })), s, listener)).join('\n');
};
type Wires = Extract<SetDescription['aerial'], { kind: 'wires' }>;
const wires = (shape: Wires['shape'], ground: Wires['ground']): Wires => ({ kind: 'wires', shape, height: 5, ground });
const earth = { length: 5, diameter: 1e-3, earthResistance: 100 };
const rod = { length: 1, diameter: 5e-3, metal: 'copper' } as const;

test('an aerial put up is told of overhead lines and lightning, given by its wires or otherwise', () => {
  expect(told(set.aerial)).toMatch(/overhead lines/);
  // rigged out of doors by what they are: radials guy a mast, an earth rod stands in the ground
  const up = { kind: 'rod', rod, lean: { angle: 0, bearing: 0 } } as const;
  const radials = { kind: 'radials', count: 3, droop: 0.7, length: 0.7, diameter: 1e-3, metal: 'copper' } as const;
  expect(told(wires({ ...up, against: radials }, { kind: 'free-space' }))).toMatch(/overhead lines/);
  expect(told(wires({ ...up, against: { kind: 'earth-wire', metal: 'copper', ...earth } }, { kind: 'perfect' }))).toMatch(/lightning/);
  const v = { ...rod, kind: 'dipole', length: 1.4, includedAngle: 2, bend: 'down', slope: 0 } as const;
  expect(told(wires({ ...v, orientation: { kind: 'horizontal', broadside: 0 } }, { kind: 'free-space' }))).toMatch(/overhead lines/);
});
test('an aerial on earth is told of mains, gas and water, given by its wires or otherwise', () => {
  expect(told({ kind: 'whip', ...rod, counterpoise: { kind: 'earth-wire', ...earth } })).toMatch(/never the mains earth/);
  const shape = { kind: 'rod', rod, lean: { angle: 0, bearing: 0 }, against: { kind: 'earth-wire', metal: 'copper', ...earth } } as const;
  expect(told(wires(shape, { kind: 'perfect' }))).toMatch(/never the mains earth/);
  expect(told(set.aerial)).not.toMatch(/mains earth/);
});
test('a strong field is told against the public reference level', () => {
  expect(told(set.aerial, 1e6)).toMatch(/public reference level/);
  expect(told(set.aerial, 1e3)).not.toMatch(/public reference level/);
});
