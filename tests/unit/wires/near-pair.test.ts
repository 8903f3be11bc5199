import { expect, test } from 'vitest';
import { ETA0, gaussLegendre, type NearPair, nearPair } from '#engine';

const K = 2 * Math.PI;

type Vector = readonly [number, number, number];
const along = (p: Vector, d: Vector, t: number): Vector => [p[0] + t * d[0], p[1] + t * d[1], p[2] + t * d[2]];
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

function pair(given: Partial<NearPair>): NearPair {
  return {
    start: [0, 0, 0],
    direction: [0, 0, 1],
    length: 0.05,
    radius: 0.001,
    sourceStart: [0, 0, 0],
    sourceDirection: [0, 0, 1],
    sourceLength: 0.05,
    sourceRadius: 0.001,
    tubular: false,
    ...given,
  };
}

const half = (end: number, t: number, d: number) => Math.sin(K * (end === 0 ? d - t : t)) / Math.sin(K * d);
const slope = (end: number, t: number, d: number) => ((end === 0 ? -1 : 1) * K * Math.cos(K * (end === 0 ? d - t : t))) / Math.sin(K * d);

/** The same double integrals by plain Gauss in many equal panels, and for tubes by a fine mean over the circumference. */
function plainly(p: NearPair, panels: number, turns: number): Float64Array {
  const out = new Float64Array(16);
  const { nodes, weights } = gaussLegendre(12);
  const points = (d: number) =>
    Array.from({ length: panels }, (_, q) => nodes.map((x) => ((q + (1 + x) / 2) * d) / panels)).flatMap((t, q) =>
      Array.from(t, (v, i) => ({ t: v, w: ((weights[i]! / 2) * d) / panels, q })),
    );
  const angles = Array.from({ length: turns }, (_, i) => (Math.PI * (i + 0.5)) / turns);
  const across = p.tubular ? angles.map((a) => p.radius ** 2 + p.sourceRadius ** 2 - 2 * p.radius * p.sourceRadius * Math.cos(a)) : [0];
  for (const s of points(p.length)) {
    const x = along(p.start, p.direction, s.t);
    for (const r of points(p.sourceLength)) {
      const y = along(p.sourceStart, p.sourceDirection, r.t);
      const square = (x[0] - y[0]) ** 2 + (x[1] - y[1]) ** 2 + (x[2] - y[2]) ** 2;
      let [gr, gi] = [0, 0];
      for (const extra of across) {
        const distance = Math.sqrt(square + extra);
        gr += Math.cos(K * distance) / distance / across.length;
        gi -= Math.sin(K * distance) / distance / across.length;
      }
      for (let a = 0; a < 2; a++)
        for (let b = 0; b < 2; b++) {
          const f = s.w * r.w * half(a, s.t, p.length) * half(b, r.t, p.sourceLength);
          const q = s.w * r.w * slope(a, s.t, p.length) * slope(b, r.t, p.sourceLength);
          const o = 8 * a + 4 * b;
          out[o] = out[o]! + f * gr;
          out[o + 1] = out[o + 1]! + f * gi;
          out[o + 2] = out[o + 2]! + q * gr;
          out[o + 3] = out[o + 3]! + q * gi;
        }
    }
  }
  return out;
}

function compare(p: NearPair, panels: number, turns: number, tolerance: number): void {
  const got = new Float64Array(16);
  nearPair(p, K, got);
  const wanted = plainly(p, panels, turns);
  for (const part of [0, 2]) {
    const top = Math.max(...[0, 4, 8, 12].map((o) => Math.hypot(wanted[o + part]!, wanted[o + part + 1]!)));
    for (let o = part; o < 16; o += 4)
      for (const i of [o, o + 1]) expect(Math.abs(got[i]! - wanted[i]!), `entry ${i}`).toBeLessThan(tolerance * top);
  }
}

test('rival: parallel side by side, by plain quadrature', () => {
  compare(pair({ sourceStart: [0.01, 0, 0.013], sourceLength: 0.04 }), 24, 1, 1e-7);
});
test('rival: skew, passing close, by plain quadrature', () => {
  compare(pair({ sourceStart: [-0.02, 0.006, 0.02], sourceDirection: [Math.SQRT1_2, 0, Math.SQRT1_2], sourceLength: 0.06 }), 30, 1, 1e-7);
});
test('rival: on one line, a gap apart, tubes of two thicknesses, by plain quadrature', () => {
  compare(pair({ sourceStart: [0, 0, 0.06], sourceRadius: 0.003, tubular: true }), 12, 24, 1e-6);
});
test('rival: a thick segment and itself, by plain quadrature over tube and length', () => {
  compare(pair({ radius: 0.006, sourceRadius: 0.006, length: 0.03, sourceLength: 0.03, tubular: true }), 20, 200, 3e-3);
});
test('rival: neighbours of two thicknesses at a right angle, by plain quadrature', () => {
  compare(pair({ sourceStart: [0, 0, 0.05], sourceDirection: [1, 0, 0], sourceRadius: 0.004, tubular: true }), 30, 60, 1e-4);
});

test('rival: two bent bases, by the closed-form field of sinusoidal monopoles (Richmond; reference/antennas.md section 5)', () => {
  // tested base: two segments meeting at a corner; source base: two segments along one line, so that its end charges cancel
  const tested: { start: Vector; direction: Vector; end: 0 | 1; sign: number }[] = [
    { start: [0.03, 0.02, 0.05], direction: [0, 0.6, 0.8], end: 1, sign: 1 },
    { start: along([0.03, 0.02, 0.05], [0, 0.6, 0.8], 0.05), direction: [0.8, 0.6, 0], end: 0, sign: 1 },
  ];
  const sources: { start: Vector; end: 0 | 1 }[] = [
    { start: [0, 0, -0.05], end: 1 },
    { start: [0, 0, 0], end: 0 },
  ];
  let [zr, zi] = [0, 0];
  const out = new Float64Array(16);
  for (const t of tested)
    for (const s of sources) {
      nearPair(pair({ start: t.start, direction: t.direction, sourceStart: s.start }), K, out);
      const o = 8 * t.end + 4 * s.end;
      const cosine = t.direction[2];
      // (j eta/4 pi) [k t.t A - Q/k]
      const re = K * cosine * out[o]! - out[o + 2]! / K;
      const im = K * cosine * out[o + 1]! - out[o + 3]! / K;
      zr -= (ETA0 / (4 * Math.PI)) * im;
      zi += (ETA0 / (4 * Math.PI)) * re;
    }
  let [fr, fi] = [0, 0];
  const { nodes, weights } = gaussLegendre(40);
  for (const t of tested)
    nodes.forEach((x, i) => {
      const at = 0.025 * (1 + x);
      const w = 0.025 * weights[i]! * half(t.end, at, 0.05);
      const p = along(t.start, t.direction, at);
      const e = field(p);
      fr -= w * dot(t.direction, e.re);
      fi -= w * dot(t.direction, e.im);
    });
  expect(zr).toBeCloseTo(fr, 6);
  expect(zi).toBeCloseTo(fi, 5);
});

/** Field of the source base: monopoles from -0.05 to 0 (current 0 to 1) and 0 to 0.05 (1 to 0) on the z axis. */
function field(p: Vector): { re: Vector; im: Vector } {
  const rho = Math.hypot(p[0], p[1]);
  const d = 0.05;
  const sine = Math.sin(K * d);
  const cosine = Math.cos(K * d);
  let [er, ei, zr, zi] = [0, 0, 0, 0];
  for (const [z1, i1, i2] of [
    [-d, 0, 1],
    [0, 1, 0],
  ] as const) {
    const z2 = z1 + d;
    const r1 = Math.hypot(rho, p[2] - z1);
    const r2 = Math.hypot(rho, p[2] - z2);
    const c1 = (p[2] - z1) / r1;
    const c2 = (p[2] - z2) / r2;
    // eta/(4 pi j sin kd) {...}: 1/j = -j turns (x + jy) into (y - jx)
    const k = ETA0 / (4 * Math.PI * sine);
    const g2 = [(i1 - i2 * cosine) / r2, K * r2] as const;
    const g1 = [(i2 - i1 * cosine) / r1, K * r1] as const;
    const x = g2[0] * Math.cos(g2[1]) + g1[0] * Math.cos(g1[1]);
    const y = -g2[0] * Math.sin(g2[1]) - g1[0] * Math.sin(g1[1]);
    zr += k * y;
    zi -= k * x;
    // (I1 e1 - I2 e2) j sin kd + (I1 cos - I2) e1 c1 + (I2 cos - I1) e2 c2
    const e1 = [Math.cos(K * r1), -Math.sin(K * r1)] as const;
    const e2 = [Math.cos(K * r2), -Math.sin(K * r2)] as const;
    const u = -(i1 * e1[1] - i2 * e2[1]) * sine + (i1 * cosine - i2) * e1[0] * c1 + (i2 * cosine - i1) * e2[0] * c2;
    const v = (i1 * e1[0] - i2 * e2[0]) * sine + (i1 * cosine - i2) * e1[1] * c1 + (i2 * cosine - i1) * e2[1] * c2;
    er += (k / rho) * v;
    ei -= (k / rho) * u;
  }
  return { re: [(er * p[0]) / rho, (er * p[1]) / rho, zr], im: [(ei * p[0]) / rho, (ei * p[1]) / rho, zi] };
}
