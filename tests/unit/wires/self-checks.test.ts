import { describe, expect, test } from 'vitest';
import {
  type AerialWire,
  arrivalAxes,
  C,
  currentMoment,
  type Discretised,
  gaussLegendre,
  impedanceMatrix,
  LU,
  nearPair,
  radiatedResistance,
  SPEED_OF_LIGHT,
  type WireStructure,
  wireAerial,
  wireAerialOf,
} from '#engine';
import { described, NAMES } from './shapes.ts';

const FREQUENCY = 98e6;
const K = (2 * Math.PI * FREQUENCY) / SPEED_OF_LIGHT;
/** An arrival that is no symmetry of any shape. */
const ODD = { azimuth: 0.7, elevation: 0.35 };

for (const name of NAMES)
  describe(name, () => {
    const lossless = wireAerial(described(name, 'lossless'));
    const { discretised, solution } = lossless.solved(FREQUENCY);

    test('identity: the impedance between near segments is the same both ways', () => {
      let worst = 0;
      for (const plan of discretised.plans)
        for (const p of plan.shapes) {
          const there = new Float64Array(16);
          const back = new Float64Array(16);
          nearPair(p, K, there);
          nearPair(
            {
              start: p.sourceStart,
              direction: p.sourceDirection,
              length: p.sourceLength,
              radius: p.sourceRadius,
              sourceStart: p.start,
              sourceDirection: p.direction,
              sourceLength: p.length,
              sourceRadius: p.radius,
              tubular: p.tubular,
            },
            K,
            back,
          );
          for (const part of [0, 2]) {
            let top = 0;
            let off = 0;
            for (let a = 0; a < 2; a++)
              for (let b = 0; b < 2; b++)
                for (let i = part; i < part + 2; i++) {
                  top = Math.max(top, Math.abs(there[8 * a + 4 * b + i]!));
                  off = Math.max(off, Math.abs(there[8 * a + 4 * b + i]! - back[8 * b + 4 * a + i]!));
                }
            worst = Math.max(worst, off / top);
          }
        }
      expect(worst).toBeLessThan(2e-6);
    });

    test('identity: average gain over the sphere is 1 within 0.2 % where nothing is lost', () => {
      expect(radiatedResistance(discretised, solution) / C.inv(solution.admittance).re).toBeCloseTo(1, 2.7);
    });

    test('identity: with loss, power in is power radiated and power turned to heat', () => {
      const aerial = wireAerial(described(name, 'steel'));
      const { impedance, lossResistance } = aerial.at(FREQUENCY, ODD);
      const steel = aerial.solved(FREQUENCY);
      expect(lossResistance).toBeGreaterThan(0);
      expect((radiatedResistance(steel.discretised, steel.solution) + lossResistance) / impedance.re).toBeCloseTo(1, 2.7);
    });

    test('rival: effective length by reciprocity is that of a plane wave on the wires, both polarisations', () => {
      const m = currentMoment(discretised.mesh, discretised.feedPoint, FREQUENCY, solution.re, solution.im, ODD);
      for (const polarisation of ['horizontal', 'vertical'] as const) {
        const excited = openCircuit(discretised, polarisation);
        const reciprocal = C.div(m[polarisation], solution.admittance);
        expect(C.abs(C.sub(excited, reciprocal))).toBeLessThan(
          (1e-4 * Math.hypot(C.abs(m.horizontal), C.abs(m.vertical))) / C.abs(solution.admittance),
        );
      }
    });

    test('limit: finer segments change the impedance by no more than was foretold', () => {
      const cut = lossless.cutting(FREQUENCY);
      expect(cut.estimatedError).not.toBeNull();
      const finer = wireAerial(described(name, 'lossless', Math.ceil(1.6 * cut.segments)));
      const z = lossless.at(FREQUENCY, ODD).impedance;
      expect(C.abs(C.sub(finer.at(FREQUENCY, ODD).impedance, z)) / C.abs(z)).toBeLessThan(cut.estimatedError! + 0.005);
    });

    test('identity: all lengths doubled at half the frequency, the same impedance and twice the length', () => {
      const grown = wireAerialOf(twice(lossless.structure), lossless.cutting(FREQUENCY).segments);
      // bands lie on a grid that does not scale by two: solve the same cutting, forced
      const same = wireAerialOf(lossless.structure, lossless.cutting(FREQUENCY).segments);
      const small = same.at(FREQUENCY, ODD);
      const large = grown.at(FREQUENCY / 2, ODD);
      expect(C.abs(C.sub(large.impedance, small.impedance))).toBeLessThan(1e-4 * C.abs(small.impedance));
      expect(C.abs(C.sub(large.vertical, C.scale(small.vertical, 2)))).toBeLessThan(
        1e-4 * (C.abs(small.vertical) + C.abs(small.horizontal)),
      );
    });
  });

/** Open-circuit voltage for a plane wave of 1 V/m from the odd direction: short-circuit current times impedance. */
function openCircuit(d: Discretised, polarisation: 'horizontal' | 'vertical'): C.Complex {
  const { toward: r, [polarisation]: e } = arrivalAxes(ODD);
  const { mesh: m } = d;
  const { nodes, weights } = gaussLegendre(10);
  const re = new Float64Array(m.unknowns);
  const im = new Float64Array(m.unknowns);
  for (let s = 0; s < m.segments; s++) {
    const along = e[0] * m.tx[s]! + e[1] * m.ty[s]! + e[2] * m.tz[s]!;
    for (const end of [0, 1]) {
      let [vr, vi] = [0, 0];
      nodes.forEach((x, i) => {
        const t = (m.length[s]! / 2) * (1 + x);
        const f = Math.sin(K * (end === 0 ? m.length[s]! - t : t)) / Math.sin(K * m.length[s]!);
        const p = d.feedPoint;
        const phase =
          K * (r[0] * (m.x[s]! + t * m.tx[s]! - p.x) + r[1] * (m.y[s]! + t * m.ty[s]! - p.y) + r[2] * (m.z[s]! + t * m.tz[s]! - p.z));
        const w = (m.length[s]! / 2) * weights[i]! * f * along;
        vr += w * Math.cos(phase);
        vi += w * Math.sin(phase);
      });
      for (let i = m.rowStart[2 * s + end]!; i < m.rowStart[2 * s + end + 1]!; i++) {
        re[m.column[i]!] = re[m.column[i]!]! + m.sign[i]! * vr;
        im[m.column[i]!] = im[m.column[i]!]! + m.sign[i]! * vi;
      }
    }
  }
  const z = impedanceMatrix(d, FREQUENCY);
  const pivots = new Int32Array(z.size);
  LU.factor(z.size, z.re, z.im, pivots);
  const feedCurrent = (xr: Float64Array, xi: Float64Array): C.Complex => {
    LU.solve(z.size, z.re, z.im, pivots, xr, xi);
    let [cr, ci] = [0, 0];
    for (let i = m.rowStart[d.feed]!; i < m.rowStart[d.feed + 1]!; i++) {
      cr += m.sign[i]! * xr[m.column[i]!]!;
      ci += m.sign[i]! * xi[m.column[i]!]!;
    }
    return { re: cr, im: ci };
  };
  const gap = new Float64Array(m.unknowns);
  for (let i = m.rowStart[d.feed]!; i < m.rowStart[d.feed + 1]!; i++) gap[m.column[i]!] = m.sign[i]!;
  const admittance = feedCurrent(gap, new Float64Array(m.unknowns));
  return C.div(feedCurrent(re, im), admittance);
}

function twice(s: WireStructure): WireStructure {
  const p = (q: AerialWire['from']) => ({ x: 2 * q.x, y: 2 * q.y, z: 2 * q.z });
  return { ...s, wires: s.wires.map((w) => ({ ...w, from: p(w.from), to: p(w.to), diameter: 2 * w.diameter })) };
}
