import { expect, test } from 'vitest';
import { type AerialAt, C, type WireShape, type WireShare, type WiresDescription, wireAerial, wireShares } from '#engine';

const FREQUENCY = 98e6;
const AHEAD = { azimuth: 0, elevation: 0 };
const UPRIGHT = { angle: 0, bearing: 0 };
/** Near a quarter wave, so that rod and drop wire together are about tuned. */
const rod = { length: 0.75, diameter: 0.006, metal: 'aluminium' } as const;
const wire = { diameter: 0.001, metal: 'copper' } as const;
const box = { kind: 'box', width: 0.15, depth: 0.05, height: 0.08, metal: 'copper' } as const;

const described = (shape: WireShape, more: Partial<WiresDescription> = {}): WiresDescription => ({
  kind: 'wires',
  shape,
  height: 3,
  ground: { kind: 'free-space' },
  ...more,
});
/** Power into a plain 75 ohm load from a field of 1 V/m of the aerial's own polarisation [W]. */
const power = ({ impedance: z, horizontal, vertical }: AerialAt): number =>
  ((C.abs2(horizontal) + C.abs2(vertical)) * 75) / ((z.re + 75) ** 2 + z.im ** 2);

/** Into whatever load suits best [W]. */
const available = ({ impedance: z, horizontal, vertical }: AerialAt): number => (C.abs2(horizontal) + C.abs2(vertical)) / (4 * z.re);

const alone = wireAerial(described({ kind: 'rod', rod, lean: UPRIGHT, against: box }));
const dropped = wireAerial(described({ kind: 'rod', rod, lean: UPRIGHT, against: { kind: 'drop-wire', length: 0.75, ...wire } }));
const beam = wireAerial(
  described({
    kind: 'beam',
    reflector: { length: 1.53, behind: 0.7 },
    driven: { length: 1.42, element: { kind: 'straight' } },
    directors: [
      { length: 1.37, ahead: 0.4 },
      { length: 1.36, ahead: 1 },
    ],
    diameter: 0.01,
    metal: 'aluminium',
    polarisation: 'vertical',
    bearing: 0,
  }),
);
/** The rod on a set with a wire down to earth, by its length [m]. */
const earthed = (length: number) =>
  wireAerial(
    described(
      { kind: 'rod', rod, lean: UPRIGHT, against: { kind: 'earth-wire', length, earthResistance: 50, ...wire } },
      { height: length, ground: { kind: 'perfect' } },
    ),
  );

test('practice: a rod with an equal drop wire beats the rod on the set alone, and a beam of 1.7 m beats both (common practice, no source)', () => {
  const all = [alone, dropped, beam].map((aerial) => aerial.at(FREQUENCY, AHEAD));
  const [a, b, c] = all.map(power);
  // into a plain load by some decibels each ...
  expect(b! / a!).toBeGreaterThan(2);
  expect(c! / b!).toBeGreaterThan(2);
  // ... and perfectly matched too, though there the short rod is not far behind: what it lacks is a resistance that can be matched
  const [x, y, z] = all.map(available);
  expect(y!).toBeGreaterThan(x!);
  expect(z!).toBeGreaterThan(y!);
});

test('practice: an earth wire on a rod does not help at VHF (common practice, no source): what flows where', () => {
  const best = available(dropped.at(FREQUENCY, AHEAD));
  for (const length of [1.5, 2, 3, 5, 8, 12]) {
    const aerial = earthed(length);
    const at = aerial.at(FREQUENCY, AHEAD);
    const { discretised, solution } = aerial.solved(FREQUENCY);
    const [onRod, onWire] = wireShares(discretised, solution, AHEAD) as [WireShare, WireShare];
    // 0.75 m of drop wire does more than metres of wire to earth, and so does the set alone
    expect(available(at), `${length} m`).toBeLessThan(best / 2);
    expect(available(at), `${length} m`).toBeLessThan(available(alone.at(FREQUENCY, AHEAD)) / 2);
    // because metre for metre the wire hears less than two thirds of what the rod hears, or works against it: its current turns over ...
    expect(C.abs(onWire.vertical) / length, `${length} m`).toBeLessThan((2 / 3) * (C.abs(onRod.vertical) / rod.length));
    // ... and the earth at its foot turns a good part of the power to heat
    expect(onWire.lossResistance / at.impedance.re, `${length} m`).toBeGreaterThan(0.2);
  }
  // several half-waves long, no more is left of it than of a third of a metre of rod
  const { discretised, solution } = earthed(12).solved(FREQUENCY);
  const [onRod, onWire] = wireShares(discretised, solution, AHEAD) as [WireShare, WireShare];
  expect(C.abs(onWire.vertical)).toBeLessThan(0.5 * C.abs(onRod.vertical));
});

test('practice: on medium wave the same earth wire does help: the current is alike all along (common practice, no source)', () => {
  const short = 3;
  const aerial = earthed(short);
  const { discretised, solution } = aerial.solved(1e6);
  const [, onWire] = wireShares(discretised, solution, AHEAD);
  // nearly its whole length
  expect(C.abs(onWire!.vertical) / short).toBeGreaterThan(0.85);
});

test('practice: 10 mm more rod lowers the frequency of resonance, and the set hears the difference', () => {
  const longer = wireAerial(
    described({ kind: 'rod', rod: { ...rod, length: 0.76 }, lean: UPRIGHT, against: { kind: 'drop-wire', length: 0.75, ...wire } }),
  );
  expect(longer.at(FREQUENCY, AHEAD).impedance.im).toBeGreaterThan(dropped.at(FREQUENCY, AHEAD).impedance.im);
});
