import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  coaxialRingField,
  coaxialRingMutual,
  crowdingInductance,
  crowdingShare,
  ellipticE,
  ellipticHalfDifference,
  ellipticK,
  ellipticKE,
  helixInductance,
  METALS,
  MU0,
  nagaokaRosaInductance,
  parallelFilamentMutual,
  ringInductance,
  ringSum,
  sheetInductance,
  skinDepth,
  straightWireInductance,
  winding,
  windingInductance,
  wirePairInductance,
} from '#engine';
import { values } from './reference-values.ts';

const off = (got: number, want: number) => Math.abs(got / want - 1);
const shape = (c: { turns: number; diameter: number; wire: number; pitch: number }) => ({
  turns: c.turns,
  innerDiameter: c.diameter - c.wire,
  wireDiameter: c.wire,
  pitch: c.pitch,
  metal: 'copper' as const,
});
/** far above any skin depth of the wires used: no flux in the metal */
const SHARP = 1e13;

describe('elliptic integrals', () => {
  test('rival: mpmath, 60 digits, K, E and their near difference', () => {
    for (const { m, complement, k, e, half } of values.elliptic) {
      const got = ellipticKE(m, complement);
      expect(off(got.k, k)).toBeLessThan(1e-14);
      expect(off(got.e, e)).toBeLessThan(1e-14);
      expect(off(ellipticHalfDifference(m, complement), half), `m = ${m}`).toBeLessThan(2e-14);
    }
  });
  test('limit: Legendre relation E K1 + E1 K - K K1 = pi / 2', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1 - 1e-6, noNaN: true }), (m) => {
        const relation = ellipticE(m) * ellipticK(1 - m) + ellipticE(1 - m) * ellipticK(m) - ellipticK(m) * ellipticK(1 - m);
        expect(Math.abs(relation - Math.PI / 2)).toBeLessThan(1e-13);
      }),
    );
  });
});

describe('rings', () => {
  test('rival: mutual inductance, Maxwell in mpmath with 60 digits, from a tenth of a micrometre to 10 000 radii apart', () => {
    // the radii themselves are rounded: that alone is 1e-12 where they differ by a millionth
    for (const { r1, r2, z, value } of values.mutual)
      expect(off(coaxialRingMutual(r1, r2, z), value), `${r1} ${r2} ${z}`).toBeLessThan(1e-9);
  });
  test('limit: far rings are dipoles, mu0 pi r1^2 r2^2 / (2 z^3)', () => {
    expect(off(coaxialRingMutual(0.01, 0.02, 50), (MU0 * Math.PI * (0.01 * 0.02) ** 2) / (2 * 50 ** 3))).toBeLessThan(1e-6);
  });
  test('rival: flux density by numerical Biot-Savart', () => {
    for (const { r, z, radial, axial } of values.field) {
      const b = coaxialRingField(r, z);
      expect(off(b.radial, radial)).toBeLessThan(1e-9);
      expect(off(b.axial, axial)).toBeLessThan(1e-9);
    }
  });
  test('limit: radial flux density is the change of mutual inductance along the axis, -dM/dz = 2 pi R B_r', () => {
    const step = 1e-7;
    for (const z of [0.001, 0.004, 0.02]) {
      const slope = (coaxialRingMutual(0.005, 0.005, z + step) - coaxialRingMutual(0.005, 0.005, z - step)) / (2 * step);
      expect(off(2 * Math.PI * 0.005 * coaxialRingField(0.005, z).radial, -slope)).toBeLessThan(1e-6);
    }
  });
  test('limit: a ring is two filaments a radius apart, and surface and uniform current differ by the flux inside, mu0 R / 4', () => {
    const thin = ringInductance(0.1, 1e-5, 'surface');
    expect(off(coaxialRingMutual(0.1, 0.1, 1e-5), thin)).toBeLessThan(1e-6);
    expect(off(ringInductance(0.1, 1e-5, 'uniform') - thin, (MU0 * 0.1) / 4)).toBeLessThan(1e-6);
  });
});

describe('straight wires', () => {
  test("rival: Neumann's double integral by mpmath", () => {
    for (const { l1, l2, gap, spacing, value } of values.filaments)
      expect(off(parallelFilamentMutual(l1, l2, gap, spacing), value)).toBeLessThan(1e-10);
  });
  test('limit: a long pair has mu0 / pi ln(s / a) a metre', () => {
    expect(off(wirePairInductance(10, 0.0005, 0.01), ((10 * MU0) / Math.PI) * Math.log(0.01 / 0.0005))).toBeLessThan(2e-3);
  });
  test('published: straight wire with surface current before the approximation for long wires (reference/coils.json, wire-hf-l20d1, note)', () => {
    expect(straightWireInductance(0.02, 0.0005)).toBeCloseTo(1.362748159e-8, 16);
  });
  test('limit: a wire in two parts in line is the whole wire', () => {
    const [a, l1, l2] = [0.0005, 0.013, 0.021];
    const parts = straightWireInductance(l1, a) + straightWireInductance(l2, a) + 2 * parallelFilamentMutual(l1, l2, 0, a);
    expect(off(parts, straightWireInductance(l1 + l2, a))).toBeLessThan(1e-12);
  });
});

describe('winding', () => {
  test('rival: helix by Neumann over a polygon of 480 sides a turn', () => {
    for (const c of values.helix) {
      const h = helixInductance(c.diameter / 2, c.wire / 2, c.pitch, c.turns, c.lead);
      expect(off(h.around + h.along, c.winding), `${c.turns} turns`).toBeLessThan(4e-3);
      expect(off(h.leads, c.leads), `leads of ${c.turns} turns`).toBeLessThan(0.02);
    }
  });
  test('rival: ring sum with the current along the axis against the helix, 3 to 12 turns, 1 % (accuracy owed)', () => {
    for (const n of [3, 4, 5, 6, 8, 10, 12])
      for (const D of [0.006, 0.011, 0.02])
        for (const d of [0.0005, 0.001])
          for (const s of [1.2, 1.5, 2, 2.5]) {
            const w = winding(shape({ turns: n, diameter: D, wire: d, pitch: s * d }));
            const h = helixInductance(D / 2, d / 2, s * d, n);
            expect(off(w.rings.of(n) + w.axial, h.around + h.along), `${n} x ${D}, ${d}, ${s}`).toBeLessThan(0.01);
          }
  });
  test('rival: exact field of rings, current free in the surface, 1 to 20 turns, 1 %; the plain ring sum is up to 9 % above', () => {
    let worst = 0;
    for (const c of values.crowded) {
      const w = winding(shape(c));
      const plain = w.rings.of(c.turns);
      expect(off(plain - w.crowding, c.value), `${c.turns} x ${c.diameter}, ${c.wire}, ${c.pitch}`).toBeLessThan(0.01);
      worst = Math.max(worst, plain / c.value - 1);
    }
    // the hard case is among them
    expect(worst).toBeGreaterThan(0.08);
  });
  test('rival: share of the crowding that skin effect allows, -Re J2 / J0 by mpmath', () => {
    for (const { x, share } of values.across) {
      const d = 2 * x * skinDepth(METALS.copper.resistivity, 1e6);
      expect(Math.abs(crowdingShare(d, 'copper', 1e6) - share)).toBeLessThan(1e-11);
    }
  });
  test('rival: Nagaoka and Rosa, 5 to 60 turns, 1 %', () => {
    for (const n of [5, 10, 30, 60])
      for (const s of [1.1, 2]) {
        const sum = ringSum(0.01, 0.0002, 0.0004 * s, n, 'uniform').of(n);
        expect(off(nagaokaRosaInductance(n, 0.02, 0.0004, 0.0004 * s, 'uniform'), sum)).toBeLessThan(0.01);
      }
  });
  test('limit: many fine turns are a current sheet', () => {
    const n = 400;
    expect(off(ringSum(0.02, 0.00004, 0.0001, n, 'uniform').of(n), sheetInductance(n, 0.04, n * 0.0001))).toBeLessThan(2e-3);
  });
  test('rival: parts of a turn closed by their chord, helix and chord by Neumann, 5 % from 3 turns up, 10 % at 1 1/2', () => {
    for (const c of values.parts) {
      const w = winding(shape(c));
      const sum = w.rings.of(w.effectiveTurns) + w.axial;
      expect(off(sum, c.closed), `${c.turns} x ${c.diameter}`).toBeLessThan(c.turns < 2 ? 0.1 : 0.05);
    }
  });
  test('limit: from direct current, with flux in the wire and no crowding, down to perfect skin effect', () => {
    const w = winding(shape({ turns: 5, diameter: 0.011, wire: 0.001, pitch: 0.002 }));
    const low = windingInductance(w, 1);
    const high = windingInductance(w, SHARP);
    expect(off(high, w.rings.of(5) + w.axial - w.crowding)).toBeLessThan(1e-4);
    expect(off(low, w.rings.of(5) + w.axial + (MU0 * w.wireLength) / (8 * Math.PI))).toBeLessThan(1e-6);
    for (let f = 1e3; f < 1e10; f *= 3) expect(windingInductance(w, 3 * f)).toBeLessThanOrEqual(windingInductance(w, f));
  });
  test('limit: crowding vanishes for thin wire and grows with it', () => {
    const share = (d: number) => crowdingInductance(0.005, d / 2, 0.002, 5) / ringSum(0.005, d / 2, 0.002, 5, 'surface').of(5);
    expect(share(1e-5)).toBeLessThan(1e-4);
    expect(share(0.0005)).toBeLessThan(share(0.001));
    expect(share(0.001)).toBeLessThan(share(0.0018));
  });
});
