import { ETA0 } from '../constants.ts';
import { term } from '../figure.ts';
import { C } from '../numeric/index.ts';
import { PLAIN_WIRE, straightWireResistance } from './conductor.ts';
import { feedRatio, inducedEmfRemarks, LEAST_FEED_CURRENT } from './induced-emf.ts';
import { reactanceOfCurrent } from './reactance-of-current.ts';
import { type CurrentPiece, sineCurrent, squareLength } from './sinusoidal-current.ts';
import type { UprightKind } from './upright.ts';
import type { Counterpoise, Whip } from './whip-description.ts';

type EarthWire = Extract<Counterpoise, { kind: 'earth-wire' }>;

/**
 * Mean surge impedance of a straight wire alone: 60 (ln(2 l/a) - 1) [ohm].
 *
 * Source: Jordan & Balmain, Electromagnetic Waves and Radiating Systems, sec. 11.9; Schelkunoff 1941 (from memory).
 */
const surgeImpedance = (length: number, radius: number): number => (ETA0 / (2 * Math.PI)) * (Math.log((2 * length) / radius) - 1);

/**
 * Current on the wire from the earth (z = 0) to the set (z = length), as on a lossless line that ends in the earth resistance.
 *
 * I(z) = [cos kz + j (R_e/Z_c) sin kz] / [cos k l + j (R_e/Z_c) sin k l]
 */
function earthWireCurrent(wire: EarthWire, k: number): CurrentPiece {
  const radius = wire.diameter / 2;
  const ratio = wire.earthResistance / surgeImpedance(wire.length, radius);
  const feed = { re: Math.cos(k * wire.length), im: ratio * Math.sin(k * wire.length) };
  const size = C.abs(feed);
  const held = size < LEAST_FEED_CURRENT ? C.scale(size === 0 ? C.ONE : feed, LEAST_FEED_CURRENT / (size || 1)) : feed;
  return {
    from: 0,
    to: wire.length,
    radius,
    forward: C.div(C.complex((1 + ratio) / 2), held),
    backward: C.div(C.complex((1 - ratio) / 2), held),
  };
}

/**
 * Rod above the set, wire from the set straight down to an earth rod.
 *
 * On the wire the current is that of a line ended by the earth resistance; on the rod it is the sinusoid that vanishes at the tip. All over a
 * conducting plane, with images. While the wire is short against the wavelength its current is the same all along: it lengthens the aerial by its
 * whole height and only the earth resistance is in the way. When it is several wavelengths long its current turns over again and again, the parts
 * cancel towards the horizon, and it radiates upward instead: it does not help there. Beside the moment method of the wires: voltage some 10 %
 * high and X within 3 % below a quarter wave; beyond, gain towards the horizon within 2 dB, in its nulls 5 dB.
 *
 * Source: radiation and reactance as for a drop wire; line equations, Terman, Radio Engineers' Handbook (1943) sec. 3.
 */
export function whipOverEarthWire(whip: Whip, wire: EarthWire): UprightKind {
  const tip = wire.length + whip.length;
  return {
    method: 'induced EMF, wire to earth as a line',
    source: 'Jordan & Balmain, Electromagnetic Waves and Radiating Systems, sec. 11.9, 14',
    state(frequency, k) {
      const down = earthWireCurrent(wire, k);
      const rod = sineCurrent(k, wire.length, tip, whip.diameter / 2, tip, 1 / feedRatio(k * whip.length));
      const pieces = [down, rod];
      return {
        pieces,
        over: 'plane',
        feed: wire.length,
        reactance: reactanceOfCurrent(pieces, k, 'plane'),
        loss:
          straightWireResistance(whip.metal, whip.diameter, frequency) * squareLength(rod, k) +
          straightWireResistance(PLAIN_WIRE, wire.diameter, frequency) * squareLength(down, k) +
          wire.earthResistance * C.abs2(C.add(down.forward, down.backward)),
      };
    },
    remarks(frequency, wavelength) {
      const remarks = inducedEmfRemarks(2 * whip.length, whip.diameter, wavelength);
      if (wire.length > wavelength / 4)
        remarks.push(
          'the earth wire is longer than a quarter wave: the set no longer stands at earth potential, and the figures are rough',
        );
      if (frequency > 10e6) remarks.push('above some 10 MHz an earth rod does not have the resistance measured at low frequency');
      return remarks;
    },
    own: () => [],
    reactance: {
      formula: 'X = eta/(4 pi k) * Re sum of J_i * integral of I*(z) e^(-jkR_i)/R_i dz, images included',
      source: 'Jordan & Balmain, Electromagnetic Waves and Radiating Systems, sec. 14',
      holds: 'rough where the wire is longer than a quarter wave',
    },
    loss: {
      formula: "R_l = R_e |I(earth)/I(feed)|^2 + sum of R' * integral of |I(z)/I(feed)|^2 dz",
      source: 'Terman, Radio Engineers Handbook (1943) sec. 3 (line current); wire taken as copper',
    },
    terms: [
      term('h', 'length of the rod', whip.length, 'm'),
      term('l', 'length of the earth wire', wire.length, 'm'),
      term('R_e', 'earth resistance', wire.earthResistance, 'ohm'),
      term('Z_c', 'surge impedance of the earth wire', surgeImpedance(wire.length, wire.diameter / 2), 'ohm'),
    ],
    holds: 'earth wire straight down and below a quarter wave; beyond that the direction is right and the number rough',
  };
}
