import { describe, expect, test } from 'vitest';
import { aerialModel, assemble, bestDial, C, designBeam, listeningPoint, receiveAll, standAt, wireAerial } from '#engine';
import { type Improvement, improvements } from '#find';
import { type Example, example, type Wires } from './examples.ts';

const SHELF = { detectors: {}, earpieces: {}, transformers: {}, capacitors: {} };
const ROD = 'rod-and-drop-wire.json';
const rod = { kind: 'wires', shape: 'rod', length: '70 cm' };
const box = { kind: 'box', width: '15 cm', depth: '5 cm', height: '10 cm' };
const indexOf = (e: Example, name: string) => e.place.stations.findIndex((s) => s.name === name);
const advice = (e: Example, name: string): readonly Improvement[] => improvements(e, indexOf(e, name), SHELF);
const keyed = (found: readonly Improvement[], key: string): Improvement => {
  const one = found.find((i) => i.change.key === key);
  if (!one) throw new Error(`no ${key} among ${found.map((i) => i.change.key)}`);
  return one;
};
const wiresOf = (i: Improvement): Wires => i.change.situation.set.aerial as Wires;
const headroom = (e: Pick<Example, 'place' | 'set' | 'listener'>, name: string): number => {
  const r = standAt(e.place, assemble(e.set, e.listener));
  const k = e.place.stations.findIndex((s) => s.name === name);
  const dial = bestDial(r, k);
  if ('missing' in dial) throw new Error('must tune');
  return Math.max(...listeningPoint(r, k, dial).evaluation.hearing.headroom);
};

describe('advice for aerials of wires', () => {
  const alone = example(ROD, { ...rod, against: box });
  const found = advice(alone, 'Lantern');

  test('identity: hang the drop wire that is advised, and what was promised comes', () => {
    const drop = keyed(found, 'aerial.dropWire');
    expect(drop.change.words).toBe('hang a drop wire as long as the rod');
    const made = example(ROD, { ...rod, against: { kind: 'drop-wire', length: '70 cm' } });
    expect(made.set.aerial).toEqual(wiresOf(drop));
    expect(headroom(made, 'Lantern') - headroom(alone, 'Lantern')).toBeCloseTo(drop.gain!, 6);
  });
  test('practice: from a rod on the set up, drop wire, dipole and beam, each better than the last (common practice, no source)', () => {
    const gains = ['aerial.dropWire', 'aerial.beam'].map((key) => keyed(found, key).gain!);
    expect(gains[0]).toBeGreaterThan(6);
    expect(gains[1]).toBeGreaterThan(gains[0]! + 4);
    // an upright dipole is what rod and drop wire are already
    expect(Math.abs(keyed(found, 'aerial.dipole').gain! - gains[0]!)).toBeLessThan(4);
  });
  test('identity: the beam put up is one that the designer makes for that frequency, to a hundredth of a decibel or so', () => {
    const { aerial: _, ...situation } = keyed(found, 'aerial.beam').change.situation.set;
    expect(situation.tank).toBe(alone.set.tank);
    const beam = wiresOf(keyed(found, 'aerial.beam'));
    const { bearing, elevation } = receiveAll(alone.place)[indexOf(alone, 'Lantern')]!;
    expect(beam.shape).toMatchObject({ kind: 'beam', polarisation: 'vertical', bearing, diameter: 8e-3 });
    const into75 = (aerial: Wires, frequency: number) => {
      const figures = wireAerial(aerial).figures(frequency, { azimuth: bearing, elevation: 0 });
      const v = (name: string) => figures.find((f) => f.name === `aerial.${name}`)!.value!;
      const z = { re: v('resistance'), im: v('reactance') };
      return v('gain') + 10 * Math.log10((4 * 75 * z.re) / C.abs2({ re: z.re + 75, im: z.im }));
    };
    const own = designBeam({
      frequency: 101.7e6,
      boom: (0.4 * 299_792_458) / 101.7e6,
      elements: 3,
      diameter: 8e-3,
      metal: 'aluminium',
      polarisation: 'vertical',
      bearing,
      driven: { kind: 'straight' },
      goal: { kind: 'impedance', resistance: 75, reactance: 0 },
    });
    const promised = own.best.gain + 10 * Math.log10(own.best.match);
    expect(Math.abs(into75(beam, 101.7e6) - promised)).toBeLessThan(0.15);
    expect(elevation).toBeGreaterThan(0);
  });
  test('a level wave: lean the rod over, across the line to the mast', () => {
    const turn = keyed(advice(alone, 'Fen Talk'), 'aerial.turn');
    expect(turn.change.words).toBe('lean the rod right over, broadside to the mast');
    const fen = receiveAll(alone.place)[indexOf(alone, 'Fen Talk')]!;
    const arrival = { azimuth: fen.bearing, elevation: fen.elevation };
    const before = aerialModel(alone.set.aerial as Wires).at(99.2e6, arrival);
    const after = aerialModel(wiresOf(turn)).at(99.2e6, arrival);
    expect(C.abs(after.horizontal)).toBeGreaterThan(3 * C.abs(before.horizontal));
  });
  test('a dipole cut too long and turned away: turn it, cut it; cut so, it resonates on the station', () => {
    const dipole = { kind: 'wires', shape: 'dipole', length: '1.8 m', orientation: { kind: 'horizontal', broadside: '170 deg' } };
    const all = advice(example(ROD, dipole), 'Fen Talk');
    expect(keyed(all, 'aerial.turn').gain).toBeGreaterThan(1);
    const { re, im } = wireAerial(wiresOf(keyed(all, 'aerial.cut'))).at(99.2e6, { azimuth: 0, elevation: 0 }).impedance;
    expect(Math.abs(im)).toBeLessThan(0.1 * re);
    expect(all.map((i) => i.change.key)).not.toContain('aerial.dipole');
  });
  test('a rod and drop wire cut too short are cut together to two quarter waves, somewhat short', () => {
    const short = example(ROD, { ...rod, length: '50 cm', against: { kind: 'drop-wire', length: '50 cm' } });
    const cut = keyed(advice(short, 'Lantern'), 'aerial.cut');
    expect(cut.change.words).toMatch(/^cut the rod to 0\.\d\d m and the drop wire to 0\.\d\d m for this station$/);
    const { shape } = wiresOf(cut);
    if (shape.kind !== 'rod' || shape.against.kind !== 'drop-wire') throw new Error('it is still a rod and its wire');
    for (const length of [shape.rod.length, shape.against.length]) {
      expect((length * 101.7e6) / 299_792_458).toBeGreaterThan(0.22);
      expect((length * 101.7e6) / 299_792_458).toBeLessThan(0.25);
    }
  });
  test('a beam is pointed, its elements turned where the wave asks for it; no other beam is put up', () => {
    const beam = example('beam-from-its-elements.json');
    expect(keyed(advice(beam, 'Fen Talk'), 'aerial.turn').change.words).toBe('point the beam at the mast');
    const all = advice(beam, 'Lantern');
    expect(keyed(all, 'aerial.turn').change.words).toBe('point the beam at the mast, its elements upright');
    // its feeder stays with it
    expect(wiresOf(keyed(all, 'aerial.turn')).feeder).toEqual((beam.set.aerial as Wires).feeder);
    expect(all.map((i) => i.change.key)).not.toContain('aerial.beam');
  });
  test('raised, the aerial stands higher in the field and over its ground; one on a wire to earth keeps its height', () => {
    const higher = keyed(found, 'place.higher').change.situation;
    expect(higher.place.site.height).toBe(11);
    expect((higher.set.aerial as Wires).height).toBe(11);
    const earthed = example(ROD, { ...rod, against: { kind: 'earth-wire', length: '9 m' } });
    const up = advice(earthed, 'Lantern').find((i) => i.change.key === 'place.higher');
    if (up) expect(wiresOf(up).height).toBe(8);
  });
  test('loops: stood on edge or turned, and grown to resonance where a side is a side', () => {
    const square = example(ROD, { kind: 'wires', shape: 'square-loop', side: '60 cm', bearing: '20 deg' });
    const all = advice(square, 'Fen Talk');
    expect(keyed(all, 'aerial.turn').change.words).toBe('turn the loop broadside to the mast, fed at the bottom');
    const cut = wiresOf(keyed(all, 'aerial.cut')).shape;
    // published: Balanis sec. 5.3, the loop a wavelength and a little more round
    const round = (4 * (cut as { side: number }).side * 99.2e6) / 299_792_458;
    expect(round).toBeGreaterThan(1);
    expect(round).toBeLessThan(1.2);
  });
  test('limit: wires that cannot be cut or turned get neither; nothing throws', () => {
    const list = {
      kind: 'wires',
      shape: 'free-list',
      wires: [{ from: ['-0.7 m', '0 m', '3 m'], to: ['0.7 m', '0 m', '3 m'] }],
      feed: { wire: 0 },
    };
    const keys = advice(example(ROD, list), 'Fen Talk').map((i) => i.change.key);
    expect(keys).not.toContain('aerial.turn');
    expect(keys).not.toContain('aerial.cut');
    // half as long would be no folded dipole any more: the search goes where it can
    const folded = {
      kind: 'wires',
      shape: 'folded-dipole',
      length: '1.5 m',
      spacing: '30 cm',
      orientation: { kind: 'horizontal', broadside: '110 deg' },
    };
    expect(advice(example(ROD, folded), 'Fen Talk').length).toBeGreaterThan(0);
  });
});
