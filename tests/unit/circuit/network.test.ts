import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { C, drawTogether, EARTH, type Element, Network, poles, powers } from '#engine';

const R = (name: string, a: string, b: string, resistance: number): Element => ({ kind: 'resistor', name, a, b, resistance });
const Cap = (name: string, a: string, b: string, capacitance: number): Element => ({ kind: 'capacitor', name, a, b, capacitance });
const L = (name: string, a: string, b: string, h: number): Element => ({
  kind: 'windings',
  name,
  windings: [{ name, a, b }],
  inductance: [[h]],
});
const V = (a: string, re: number, im = 0): Element => ({ kind: 'voltage', name: 'emf', a, b: EARTH, re, im });
const coupled = (l1: number, l2: number, m: number, a: string, b: string): Element => ({
  kind: 'windings',
  name: 'pair',
  windings: [
    { name: 'first', a, b: EARTH },
    { name: 'second', a: b, b: EARTH },
  ],
  inductance: [
    [l1, m],
    [m, l2],
  ],
});

describe('solve at a frequency', () => {
  test('limit: series R, L, C against the textbook impedance', () => {
    const n = new Network([V('in', 1), R('r', 'in', 'a', 3), L('l', 'a', 'b', 1e-6), Cap('c', 'b', EARTH, 12e-12)]);
    for (const f of [1e6, 45e6, 1e9]) {
      const w = 2 * Math.PI * f;
      const i = C.inv({ re: 3, im: w * 1e-6 - 1 / (w * 12e-12) });
      const got = n.solveAt(f)!.current('l');
      expect(C.abs(C.sub(got, i))).toBeLessThan(1e-10 * C.abs(i));
    }
  });
  test('limit: an inductor is a short and a capacitor is open at 0 Hz', () => {
    const n = new Network([V('in', 2), R('r', 'in', 'a', 50), L('l', 'a', EARTH, 1), Cap('c', 'a', EARTH, 1e-6)]);
    const s = n.solveAt(0)!;
    expect(s.voltage('a').re).toBe(0);
    expect(s.current('l').re).toBeCloseTo(0.04, 12);
  });
  test('identity: ideal transformer limit of two tightly coupled windings', () => {
    // k = 1 exactly, turns 1:3; load 900 ohm seen as 100 ohm beside the primary reactance
    const n = new Network([V('in', 1), coupled(1, 9, 3, 'in', 'out'), R('load', 'out', EARTH, 900)]);
    const s = n.solveAt(1e3)!;
    expect(s.voltage('out').re).toBeCloseTo(3, 9);
    // the source delivers what the load takes
    expect(-s.current('emf').re).toBeCloseTo(0.01, 9);
  });
  test('a network with nothing to hold a node says so', () => {
    expect(new Network([V('in', 1), Cap('c', 'in', 'x', 1e-12), Cap('d', 'x', 'y', 1e-12)]).solveAt(0)).toBeNull();
  });
  test('Thevenin: open voltage and short-circuit current of a loaded divider', () => {
    const n = new Network([V('in', 10), R('a', 'in', 'out', 30), R('b', 'out', EARTH, 60)]);
    const out = new Float64Array(4);
    expect(n.thevenin(1, n.node('out'), out)).toBe(true);
    expect(out[0]).toBeCloseTo(20 / 3, 12);
    expect(out[2]).toBeCloseTo(20, 12);
  });
  test('a value that no network can hold is refused by name', () => {
    expect(() => new Network([R('joint', 'a', EARTH, -1)])).toThrow(/joint.*-1 ohm/);
    expect(() => new Network([Cap('stray', 'a', EARTH, Number.NaN)])).toThrow(/stray/);
  });
});

describe('power', () => {
  test("identity: Tellegen's theorem over random ladders", () => {
    const value = (lo: number, hi: number) => fc.double({ min: Math.log(lo), max: Math.log(hi), noNaN: true }).map(Math.exp);
    fc.assert(
      fc.property(
        value(1e5, 1e9),
        fc.array(
          fc.record({
            r: value(0.01, 1e5),
            l: value(1e-9, 1e-4),
            c: value(1e-13, 1e-9),
            k: fc.double({ min: 0.01, max: 0.99, noNaN: true }),
          }),
          {
            minLength: 1,
            maxLength: 5,
          },
        ),
        (f, steps) => {
          const es: Element[] = [V('n0', 1, 0.5)];
          steps.forEach(({ r, l, c, k }, i) => {
            es.push(R(`r${i}`, `n${i}`, `m${i}`, r), Cap(`c${i}`, `n${i + 1}`, EARTH, c));
            es.push({
              kind: 'windings',
              name: `w${i}`,
              windings: [
                { name: `p${i}`, a: `m${i}`, b: `n${i + 1}` },
                { name: `s${i}`, a: `n${i + 1}`, b: EARTH },
              ],
              inductance: [
                [l, k * l],
                [k * l, l],
              ],
            });
            es.push({ kind: 'impedance', name: `z${i}`, a: `n${i + 1}`, b: EARTH, at: () => ({ re: 2 * r, im: -r }) });
          });
          const n = new Network(es);
          const solution = n.solveAt(f)!;
          const p = powers(n, solution, f);
          const sum = p.reduce((s, e) => s + e.watts, 0);
          // what swings to and fro counts too: a small real power beside a large reactive one keeps fewer digits
          const size = p.reduce((s, e) => s + Math.abs(e.watts), C.abs(solution.voltage('n0')) * C.abs(solution.current('emf')));
          // element values spread over seven decades cost some digits
          expect(Math.abs(sum)).toBeLessThan(1e-7 * size);
        },
      ),
    );
  });
});

describe('drawn together', () => {
  test('identity: voltage and impedance at the kept node stay, with fewer unknowns', () => {
    const es: Element[] = [
      V('e', 1),
      R('r1', 'e', 'x1', 10),
      R('r2', 'x1', 'x2', 5),
      {
        kind: 'windings',
        name: 'w',
        windings: [
          { name: 'p', a: 'x2', b: 'x3' },
          { name: 's', a: 'top', b: 'x4' },
        ],
        inductance: [
          [1e-8, 5e-9],
          [5e-9, 1e-7],
        ],
      },
      R('r3', 'x3', EARTH, 0.1),
      R('r4', 'x4', EARTH, 0.3),
      L('lead', 'top', 'x5', 8e-9),
      L('frame', 'x6', 'x5', 3e-9),
      R('contact', 'x6', 'x7', 0.02),
      Cap('c', 'x7', EARTH, 20e-12),
    ];
    const full = new Network(es);
    const small = new Network(drawTogether(es, ['top']));
    expect(small.size).toBeLessThan(full.size - 4);
    const [a, b] = [new Float64Array(4), new Float64Array(4)];
    for (const f of [5e7, 1e8, 3e8]) {
      full.thevenin(f, full.node('top'), a);
      small.thevenin(f, small.node('top'), b);
      a.forEach((v, k) => {
        expect(b[k]! / v).toBeCloseTo(1, 9);
      });
    }
  });
});

describe('poles', () => {
  test('limit: one series circuit has its pole pair where the textbook puts it', () => {
    const [r, l, c] = [2, 2e-7, 12e-12];
    const w0 = 1 / Math.sqrt(l * c);
    const p = poles([R('r', 'a', EARTH, r), L('l', 'b', 'a', l), Cap('c', 'b', EARTH, c)], w0 / (2 * Math.PI))!;
    const alpha = r / (2 * l);
    expect(p[0]!.re / -alpha).toBeCloseTo(1, 7);
    expect(p[0]!.im / Math.sqrt(w0 * w0 - alpha * alpha)).toBeCloseTo(1, 10);
  });
  test('limit: two equal coupled tanks split to f0 / sqrt(1 +- k)', () => {
    const [l, c, k] = [2e-7, 12e-12, 0.05];
    const f0 = 1 / (2 * Math.PI * Math.sqrt(l * c));
    const p = poles([coupled(l, l, k * l, 'a', 'b'), Cap('ca', 'a', EARTH, c), Cap('cb', 'b', EARTH, c), R('r', 'a', EARTH, 1e6)], f0)!;
    const f = p
      .slice(0, 2)
      .map((s) => s.im / (2 * Math.PI))
      .sort((x, y) => x - y);
    expect(f[0]! / (f0 / Math.sqrt(1 + k))).toBeCloseTo(1, 6);
    expect(f[1]! / (f0 / Math.sqrt(1 - k))).toBeCloseTo(1, 6);
  });
  test('rival: with an aerial given by frequency, the pole gives the width of the response that the solver itself shows', () => {
    // a whip-like aerial: 5 ohm in series with 4 pF and 0.4 uH
    const at = (f: number) => ({ re: 5, im: 2 * Math.PI * f * 4e-7 - 1 / (2 * Math.PI * f * 4e-12) });
    const tank: Element[] = [
      L('coil', 't', 'm', 1.5e-7),
      R('copper', 'm', EARTH, 0.4),
      Cap('cap', 't', EARTH, 13e-12),
      R('load', 't', EARTH, 4e4),
    ];
    const f0 = 1e8;
    const [p] = poles([...tank, { kind: 'impedance', name: 'aerial', a: 't', b: EARTH, at }], f0)!;
    const n = new Network([...tank, { kind: 'impedance', name: 'aerial', a: 'e', b: 't', at }, V('e', 1)]);
    const gain = (f: number) => C.abs2(n.solveAt(f)!.voltage('t'));
    const fp = p!.im / (2 * Math.PI);
    const half = -p!.re / (2 * Math.PI);
    // the zero of the aerial's own reactance tilts the flank a little, hence per cent and not digits
    const ratio = (gain(fp + half) + gain(fp - half)) / (2 * gain(fp));
    expect(ratio).toBeGreaterThan(0.47);
    expect(ratio).toBeLessThan(0.53);
  });
});
