import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { C, type Complex, EARTH, type Element, Network, Pencil, pencilModes, phiFunctions, straightHold } from '#engine';
import { circuitEquations, modalResponse, modesOf } from '../../../src/engine/listen/modal-circuit.ts';
import { onePortFits } from '../../../src/engine/listen/one-port-fit.ts';

const R = (name: string, a: string, b: string, resistance: number): Element => ({ kind: 'resistor', name, a, b, resistance });
const Cap = (name: string, a: string, b: string, capacitance: number): Element => ({ kind: 'capacitor', name, a, b, capacitance });
const L = (name: string, a: string, b: string, h: number): Element => ({
  kind: 'windings',
  name,
  windings: [{ name, a, b }],
  inductance: [[h]],
});
const coupled = (l1: number, l2: number, k: number, a: string, b: string): Element => ({
  kind: 'windings',
  name: `${a}${b}`,
  windings: [
    { name: `${a} of ${a}${b}`, a, b: EARTH },
    { name: `${b} of ${a}${b}`, a: b, b: EARTH },
  ],
  inductance: [
    [l1, k * Math.sqrt(l1 * l2)],
    [k * Math.sqrt(l1 * l2), l2],
  ],
});

/** The response at a port by modes about f0, and by the solver of networks at each frequency: greatest difference by the greatest response. */
function misfit(elements: readonly Element[], node: string, f0: number, half: number): number {
  const equations = circuitEquations(elements, {
    source: { node: 'in', impedance: null },
    ports: [{ from: node, to: EARTH }],
    voltages: [{ from: node, to: EARTH }],
  });
  const w0 = 2 * Math.PI * f0;
  const modes = modesOf(equations, { re: 0, im: w0 }, { re: 1e-3 * w0, im: w0 }, 1e4 * w0)!;
  const network = new Network([...elements, { kind: 'voltage', name: 'emf', a: 'in', b: EARTH, re: 1, im: 0 }]);
  const out = new Float64Array(4);
  let top = 0;
  let worst = 0;
  for (let k = -10; k <= 10; k++) {
    const f = f0 + (half * k) / 10;
    network.thevenin(f, network.node(node), out);
    const s = { re: 0, im: 2 * Math.PI * (f - f0) };
    const open = modalResponse(modes, s, 0, 0);
    const impedance = C.neg(modalResponse(modes, s, 0, 1));
    const scale = Math.hypot(out[2]!, out[3]!);
    top = Math.max(top, Math.hypot(out[0]!, out[1]!));
    worst = Math.max(
      worst,
      Math.hypot(open.re - out[0]!, open.im - out[1]!),
      (Math.hypot(impedance.re - out[2]!, impedance.im - out[3]!) / scale) * top,
    );
  }
  return worst / top;
}

describe('a circuit by its natural modes', () => {
  test('limit: the pole of a parallel tank, s^2 + s/(R C) + 1/(L C) = 0', () => {
    const equations = circuitEquations([R('r', 'in', 'top', 2e4), L('l', 'top', EARTH, 1e-7), Cap('c', 'top', EARTH, 25e-12)], {
      source: { node: 'in', impedance: null },
      ports: [],
      voltages: [],
    });
    const w0 = 2 * Math.PI * 1e8;
    const [mode] = pencilModes(equations.pencil, { re: 1e-3 * w0, im: w0 }, 1e9)!;
    const a = 1 / (2e4 * 25e-12);
    const exact: Complex = { re: -a / 2, im: Math.sqrt(1 / (1e-7 * 25e-12) - (a / 2) ** 2) };
    expect(C.abs(C.sub(mode!.pole, exact))).toBeLessThan(1e-11 * w0);
  });
  test('rival: the solver of networks, over random circuits of six kinds', () => {
    const positive = (low: number, high: number) => fc.double({ min: Math.log(low), max: Math.log(high), noNaN: true }).map(Math.exp);
    fc.assert(
      fc.property(
        fc.constantFrom('tap', 'link', 'tight', 'loop', 'dangling', 'pair'),
        positive(2e-8, 4e-7),
        positive(5e-12, 5e-11),
        positive(30, 3e4),
        positive(0.05, 3),
        fc.double({ min: 0.02, max: 0.9, noNaN: true }),
        (kind, l, c, r, loss, k) => {
          const f0 = 1 / (2 * Math.PI * Math.sqrt(l * c));
          const tank: Element[] = [L('l', 'top', 'low', l), R('loss', 'low', EARTH, loss), Cap('c', 'top', EARTH, c)];
          const circuits: Record<string, Element[]> = {
            tap: [...tank, R('r', 'in', 'top', r), L('lead', 'top', 'port', 3e-9), Cap('junction', 'port', EARTH, 2e-13)],
            link: [R('r', 'in', 'a', r), coupled(l / 5, l, k, 'a', 'top'), Cap('c', 'top', EARTH, c), R('loss', 'top', EARTH, 1e5)],
            // coupled so tightly that the windings are one
            tight: [R('r', 'in', 'a', r), coupled(l / 5, l, 1, 'a', 'top'), Cap('c', 'top', EARTH, c), R('loss', 'top', EARTH, 1e5)],
            // a loop of capacitors, and one straight across the source
            loop: [...tank, Cap('across', 'in', EARTH, 1e-12), Cap('series', 'in', 'top', 1e-13 + c / 50), Cap('on', 'top', 'in', 1e-13)],
            // a node that only an inductor joins, and a capacitor that leads nowhere
            dangling: [...tank, R('r', 'in', 'top', r), L('lead', 'top', 'port', 5e-9), Cap('nowhere', 'top', 'end', 1e-12)],
            pair: [
              R('r', 'in', 'first', r),
              Cap('c1', 'first', EARTH, c),
              Cap('c2', 'top', EARTH, c),
              coupled(l, l, k / 20, 'first', 'top'),
              R('loss', 'top', EARTH, 3e4),
            ],
          };
          const port = kind === 'tap' || kind === 'dangling' ? 'port' : 'top';
          // the port itself is an inductor's end in `dangling`: its impedance grows without bound and stands still at the reference
          expect(misfit(circuits[kind]!, port, f0, 0.01 * f0)).toBeLessThan(kind === 'dangling' ? 2e-2 : 1e-7);
        },
      ),
      { numRuns: 300, seed: 4 },
    );
  });
  test('limit: two equal tanks that know nothing of each other have a double pole, and are told apart all the same', () => {
    const twin = (name: string): Element[] => [
      R(`r ${name}`, 'in', name, 3e4),
      L(`l ${name}`, name, EARTH, 1e-7),
      Cap(`c ${name}`, name, EARTH, 25e-12),
    ];
    expect(misfit([...twin('top'), ...twin('other')], 'top', 1e8, 1e6)).toBeLessThan(1e-4);
  });
});

describe('an aerial fitted over a band', () => {
  /** a dipole near resonance and the same behind ten metres of cable */
  const dipole = (f: number): Complex => ({ re: 73 * (f / 98e6) ** 2.5, im: 12e-6 * (f - 98e6) + 3e-13 * (f - 98e6) ** 2 });
  const cable = (f: number): Complex => {
    const z = C.div(dipole(f), C.complex(75));
    const r = C.mul(C.div(C.sub(z, C.ONE), C.add(z, C.ONE)), C.scale(C.cis((-4 * Math.PI * f * 10) / 2e8), 0.8));
    return C.scale(C.div(C.add(C.ONE, r), C.sub(C.ONE, r)), 75);
  };
  for (const [name, z] of [
    ['dipole', dipole],
    ['through mismatched cable', cable],
    ['a resistor', (): Complex => ({ re: 50, im: 0 })],
  ] as const)
    test(`identity: ${name}: the fit's error is what it says, and the equations give the fit`, () => {
      for (const fit of onePortFits(z, 98e6, 1.7e6)) {
        let worst = 0;
        let top = 0;
        for (let k = -40; k <= 40; k++) {
          const f = 98e6 + (1.7e6 * k) / 40;
          worst = Math.max(worst, C.abs(C.sub(fit.at(f), z(f))));
          top = Math.max(top, C.abs(z(f)));
          // V + Z I = e with V held at zero: I = e/Z
          const pencil = new Pencil(1 + fit.unknowns);
          fit.stamp(pencil, 0, 1);
          const x = { re: new Float64Array(1 + fit.unknowns), im: new Float64Array(1 + fit.unknowns) };
          x.re[0] = 1;
          pencil.factorAt({ re: 0, im: 2 * Math.PI * f })!.solve(x);
          expect(C.abs(C.sub(C.mul({ re: x.re[0]!, im: x.im[0]! }, fit.at(f)), C.ONE))).toBeLessThan(1e-9);
        }
        expect(worst / top).toBeLessThan(1.5 * fit.error + 1e-9);
      }
    });
  test('the best fit of each is good to a part in a million', () => {
    expect(onePortFits(dipole, 98e6, 1.7e6)[0]!.error).toBeLessThan(1e-6);
    expect(onePortFits(cable, 98e6, 1.7e6)[0]!.error).toBeLessThan(1e-6);
  });
});

describe('a mode stepped exactly', () => {
  test('identity: series and closed form of the phi functions meet; phi1 and phi2 of simple arguments', () => {
    for (const turn of [0, 1, 2, 3, 4, 5]) {
      const below = phiFunctions(C.scale(C.cis(turn), 0.49999999));
      const above = phiFunctions(C.scale(C.cis(turn), 0.50000001));
      expect(C.abs(C.sub(below.first, above.first))).toBeLessThan(1e-7);
      expect(C.abs(C.sub(below.second, above.second))).toBeLessThan(1e-7);
    }
    // phi1(1) = e - 1, phi2(1) = e - 2
    expect(phiFunctions(C.ONE).first.re).toBeCloseTo(Math.E - 1, 14);
    expect(phiFunctions(C.ONE).second.re).toBeCloseTo(Math.E - 2, 14);
  });
  test('identity: the sampled response is the mean of its images, weighted by sinc^2', () => {
    const pole = { re: -2.1, im: 0.7 };
    const { decay, before, after } = straightHold(pole, 1);
    for (const angle of [-2.5, -1, 0, 0.4, 1.9]) {
      const z = C.cis(-angle);
      const sampled = C.add(after, C.div(C.mul(z, C.add(before, C.mul(decay, after))), C.sub(C.ONE, C.mul(z, decay))));
      let images: Complex = C.ZERO;
      for (let m = -2000; m <= 2000; m++) {
        const w = angle + 2 * Math.PI * m;
        const sinc = w === 0 ? 1 : Math.sin(w / 2) / (w / 2);
        images = C.add(images, C.scale(C.inv(C.sub({ re: 0, im: w }, pole)), sinc * sinc));
      }
      expect(C.abs(C.sub(sampled, images))).toBeLessThan(1e-6);
    }
  });
  test('limit: a ramp into an integrator with loss, after one step', () => {
    // x' = -x + t from rest: x = t - 1 + e^-t
    expect(straightHold({ re: -1, im: 0 }, 1).after.re).toBeCloseTo(Math.exp(-1), 14);
  });
});
