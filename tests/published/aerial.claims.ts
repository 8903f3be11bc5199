import {
  type AerialAt,
  type Arrival,
  aerialModel,
  C,
  dipoleEffectiveLength,
  EARTH,
  type Element,
  ETA0,
  gainOf,
  inducedEmfImpedance,
  levelWireCapacitance,
  loopInductance,
  Network,
  type SeparateAerial,
  SPEED_OF_LIGHT,
  smallAerialResistance,
  smallLoopEffectiveLength,
  surfaceResistance,
  uprightWireCapacitance,
} from '#engine';
import type { Claim, Comparison, Entry, LeftOut } from './claim.ts';

const FRONT: Arrival = { azimuth: 0, elevation: 0 };
const FACING = { kind: 'horizontal', broadside: 0 } as const;
/** The older books take 120 pi ohm for the wave impedance. */
const OLD_WAVE_IMPEDANCE = 120 * Math.PI;

/** Comparison in the form of antennas.json: one tolerance by name of the value, absolute or relative. */
function compare(entry: Entry, name: string, got: number): Comparison {
  const allowed = (entry.tolerance[name] ?? entry.tolerance.all) as number;
  return { what: name, got, expected: entry.expected[name] as number, tolerance: { [entry.tolerance.type as string]: allowed } };
}
/** Comparison in the form of coils.json. */
const one = (entry: Entry, what: string, got: number): readonly Comparison[] => [
  { what, got, expected: entry.expected.value as number, tolerance: entry.tolerance },
];

const wavelengthOf = (entry: Entry): number => SPEED_OF_LIGHT / (entry.inputs.frequency_Hz as number);
const at = (aerial: SeparateAerial, frequency: number): AerialAt => aerialModel(aerial).at(frequency, FRONT);
/** A dipole so thick a copper that its loss does not show in the figures compared. */
const dipole = (length: number, diameter: number): SeparateAerial => ({
  kind: 'dipole',
  length,
  diameter,
  metal: 'copper',
  orientation: FACING,
});
const isotropic: SeparateAerial = {
  kind: 'electrical',
  impedance: [{ frequency: 1e8, resistance: 75, reactance: 0 }],
  gain: 0,
  orientation: FACING,
  frontToBack: 0,
};
const availablePower = (a: AerialAt, field: number): number => (field * C.abs(a.horizontal)) ** 2 / (4 * a.impedance.re);
const radiation = (a: AerialAt): number => a.impedance.re - a.lossResistance;

/** The driving-point impedance of a one-port of elements on node `in`. */
function impedanceOf(elements: readonly Element[], frequency: number): C.Complex {
  const drive: Element = { kind: 'voltage', name: 'drive', a: 'in', b: EARTH, re: 1, im: 0 };
  return C.neg(C.inv(new Network([drive, ...elements]).solveAt(frequency)!.current('drive')));
}
const capacitor = (name: string, a: string, b: string, capacitance: number): Element => ({ kind: 'capacitor', name, a, b, capacitance });
const resistor = (name: string, a: string, b: string, resistance: number): Element => ({ kind: 'resistor', name, a, b, resistance });
const inductor = (name: string, a: string, b: string, inductance: number): Element => ({
  kind: 'windings',
  name,
  windings: [{ name, a, b }],
  inductance: [[inductance]],
});

export const claims: readonly Claim[] = [
  {
    figure: 'dipole impedance, sinusoidal current',
    against: 'induced EMF, Balanis 8-60a, 8-61a',
    errorUnit: 'ohm',
    file: 'antennas',
    ids: /^dipole-(emf-|halfwave-zero-radius$)/,
    check: (e) => {
      const z = inducedEmfImpedance(e.inputs.length_m, e.inputs.wire_radius_m, wavelengthOf(e));
      return [compare(e, 'R_ohm', z.re), compare(e, 'X_ohm', z.im)];
    },
  },
  {
    figure: 'quarter-wave monopole on a plane',
    against: 'Balanis 4-106',
    errorUnit: 'ohm',
    file: 'antennas',
    ids: /^monopole-quarterwave$/,
    check: (e) => {
      const a = at(
        {
          kind: 'whip',
          length: e.inputs.height_m,
          diameter: 2 * e.inputs.wire_radius_m,
          metal: 'copper',
          counterpoise: { kind: 'plane' },
        },
        e.inputs.frequency_Hz,
      );
      return [compare(e, 'R_ohm', radiation(a)), compare(e, 'X_ohm', a.impedance.im)];
    },
  },
  {
    figure: 'radiation resistance, short dipole',
    against: '20 pi^2 (l/lambda)^2',
    errorUnit: '%',
    file: 'antennas',
    ids: /^shortdipole-R-/,
    check: (e) => [compare(e, 'R_ohm', smallAerialResistance(e.inputs.length_m / 2, wavelengthOf(e)))],
  },
  {
    figure: 'radiation resistance, dipole to 0.2 wavelength by its current',
    against: '20 pi^2 (l/lambda)^2, wide tolerance',
    errorUnit: '%',
    file: 'antennas',
    ids: /^shortdipole-R-l0\.(02|1|2)$/,
    check: (e) => [compare(e, 'R_ohm', inducedEmfImpedance(e.inputs.length_m, 1e-4, wavelengthOf(e)).re)],
  },
  {
    figure: 'reactance, short dipole',
    against: 'Hansen 2006, -120 (ln(h/a) - 1) cot kh',
    errorUnit: '%',
    file: 'antennas',
    ids: /^shortdipole-X-/,
    check: (e) => {
      // half of the dipole stands on earth as a rising wire without a top
      const a = at(
        {
          kind: 'wire-to-earth',
          horizontal: 0,
          vertical: e.inputs.length_m / 2,
          diameter: 2 * e.inputs.wire_radius_m,
          earthResistance: 0,
        },
        e.inputs.frequency_Hz,
      );
      return [compare(e, 'X_ohm', 2 * a.impedance.im)];
    },
  },
  {
    figure: 'effective length, dipole and monopole',
    against: 'Kraus; Balanis sec. 2.15',
    errorUnit: '%',
    file: 'antennas',
    ids: /^(dipole-heff-halfwave|shortdipole-heff|monopole-heff-quarterwave)$/,
    check: (e) => {
      const wavelength = wavelengthOf(e);
      if (e.id === 'dipole-heff-halfwave')
        return [compare(e, 'effective_length_m', C.abs(at(dipole(wavelength / 2, 1e-3), e.inputs.frequency_Hz).horizontal))];
      if (e.id === 'shortdipole-heff')
        return [compare(e, 'effective_length_m', C.abs(at(dipole(e.inputs.length_m, 1e-3), e.inputs.frequency_Hz).horizontal))];
      const rod: SeparateAerial = {
        kind: 'whip',
        length: wavelength / 4,
        diameter: 1e-3,
        metal: 'copper',
        counterpoise: { kind: 'plane' },
      };
      return [compare(e, 'effective_height_m', C.abs(at(rod, e.inputs.frequency_Hz).vertical))];
    },
  },
  {
    figure: 'directivity and aperture, half-wave and short dipole',
    against: 'Balanis 4-91, 4-31',
    errorUnit: '%',
    file: 'antennas',
    ids: /^dipole-directivity$/,
    check: (e) => {
      const of = (length: number) => gainOf(dipoleEffectiveLength(length, 1, 0) ** 2, inducedEmfImpedance(length, 1e-5, 1).re, 1);
      const half = of(0.5);
      const short = of(0.01);
      return [
        compare(e, 'D_halfwave', half),
        compare(e, 'D_halfwave_dBi', 10 * Math.log10(half)),
        compare(e, 'D_short', short),
        compare(e, 'D_short_dBi', 10 * Math.log10(short)),
        compare(e, 'Aem_halfwave_over_lambda2', half / (4 * Math.PI)),
        compare(e, 'Aem_short_over_lambda2', short / (4 * Math.PI)),
      ];
    },
  },
  {
    figure: 'radiation resistance, small loop',
    against: 'Balanis 5-24',
    errorUnit: '%',
    file: 'antennas',
    ids: /^smallloop-R-C0\.[123]$/,
    check: (e) => {
      const area = e.inputs.circumference_m ** 2 / (4 * Math.PI);
      const wavelength = wavelengthOf(e);
      return [compare(e, 'R_ohm', smallAerialResistance((2 * Math.PI * e.inputs.turns * area) / wavelength, wavelength))];
    },
  },
  {
    figure: 'impedance of a loop a tenth of a wavelength around',
    against: 'Storer 1956, Wu 1962 Fourier series',
    errorUnit: '%',
    file: 'antennas',
    ids: /^smallloop-R-C0\.1-full$/,
    check: (e) => {
      const a = at(
        {
          kind: 'loop',
          diameter: 2 * e.inputs.loop_radius_m,
          turns: 1,
          wireDiameter: 2 * e.inputs.wire_radius_m,
          windingLength: 2 * e.inputs.wire_radius_m,
          metal: 'copper',
          axis: { kind: 'vertical' },
        },
        e.inputs.frequency_Hz,
      );
      return [compare(e, 'R_ohm', radiation(a)), compare(e, 'X_ohm', a.impedance.im)];
    },
  },
  {
    figure: 'directivity of a small loop',
    against: 'Balanis 5-31',
    errorUnit: '%',
    file: 'antennas',
    ids: /^smallloop-directivity$/,
    check: (e) => {
      const h = C.abs(smallLoopEffectiveLength(1e-4, 1e8, { kind: 'vertical' }, FRONT).horizontal);
      const wavelength = SPEED_OF_LIGHT / 1e8;
      const directivity = gainOf(h * h, smallAerialResistance(h, wavelength), wavelength);
      return [
        compare(e, 'D', directivity),
        {
          what: 'D_dBi',
          got: 10 * Math.log10(directivity),
          expected: e.expected.D_dBi,
          tolerance: { abs: 10 * Math.log10(1 + e.tolerance.D) },
        },
      ];
    },
  },
  {
    figure: 'effective height of a loop',
    against: '2 pi N A / lambda, Kraus; Terman 1943',
    errorUnit: '%',
    file: 'antennas',
    ids: /^loop-heff-/,
    check: (e) => {
      const h = smallLoopEffectiveLength(e.inputs.turns * e.inputs.area_m2, e.inputs.frequency_Hz, { kind: 'horizontal', plane: 0 }, FRONT);
      return [compare(e, 'effective_height_m', C.abs(h.vertical))];
    },
  },
  {
    figure: 'available power from a field',
    against: 'ITU-R P.525 conversions',
    errorUnit: '%',
    file: 'antennas',
    ids: /^rx-power-/,
    check: (e) => {
      const field = e.inputs.E_V_per_m as number;
      const f = e.inputs.frequency_Hz as number;
      const half = at(dipole(SPEED_OF_LIGHT / f / 2, 0.01), f);
      const power = availablePower(half, field);
      const iso = availablePower(at(isotropic, f), field);
      const dBm = (name: string, watts: number): Comparison => ({
        what: name,
        got: 10 * Math.log10(watts / 1e-3),
        expected: e.expected[name],
        tolerance: { abs: 10 * Math.log10(1 + e.tolerance.P_dipole_W) },
      });
      return [
        compare(e, 'P_isotropic_W', iso),
        compare(e, 'P_dipole_W', power),
        compare(e, 'emf_dipole_V', field * C.abs(half.horizontal)),
        dBm('P_isotropic_dBm', iso),
        dBm('P_dipole_dBm', power),
      ];
    },
  },
  {
    figure: 'two-element match',
    against: 'Pozar, Microwave Engineering, example 5.1',
    errorUnit: '%',
    file: 'antennas',
    ids: /^match-Pozar-5\.1-sol1$/,
    check: (e) => {
      const { frequency_Hz: f, RL_ohm: r, XL_ohm: x, Z0_ohm: z0 } = e.inputs;
      const load: Element = { kind: 'impedance', name: 'load', a: 'load', b: EARTH, at: () => ({ re: r, im: x }) };
      const z = impedanceOf([inductor('l', 'in', 'load', e.expected.L_H), capacitor('c', 'load', EARTH, e.expected.C_F), load], f);
      // the values found must turn the load into the line's own impedance
      return [
        { what: 'resistance', got: z.re, expected: z0, tolerance: { rel: e.tolerance.all } },
        { what: 'reactance', got: z.im, expected: 0, tolerance: { abs: e.tolerance.all * z0 } },
      ];
    },
  },
  {
    figure: 'capacitance of a wire to ground',
    against: '2 pi eps0 l / ln(2h/a), Terman 1943',
    errorUnit: '%',
    file: 'antennas',
    ids: /^AM-wire-C-/,
    check: (e) => [compare(e, 'C_F', levelWireCapacitance(e.inputs.length_m, e.inputs.height_m, e.inputs.wire_radius_m))],
  },
  {
    figure: 'upright wire on earth at 1 MHz',
    against: 'Terman 1943; Kraus; Hansen 2006',
    errorUnit: '%',
    file: 'antennas',
    ids: /^AM-(vertical-wire-C|short-vertical-heff|short-vertical-R)$/,
    check: (e) => {
      const diameter = 2 * ((e.inputs.wire_radius_m as number | undefined) ?? 0.001);
      const height = e.inputs.height_m as number;
      if (e.id === 'AM-vertical-wire-C') return [compare(e, 'C_F', uprightWireCapacitance(height, diameter / 2))];
      const a = at({ kind: 'wire-to-earth', horizontal: 0, vertical: height, diameter, earthResistance: 30 }, e.inputs.frequency_Hz);
      if (e.id === 'AM-short-vertical-heff') return [compare(e, 'effective_height_m', C.abs(a.vertical))];
      return [compare(e, 'R_ohm', radiation(a))];
    },
  },
  {
    figure: 'field of a quarter-wave monopole by its directivity',
    against: 'sqrt(30 x 3.28 P)/d; FCC 313.6 mV/m',
    errorUnit: '%',
    file: 'antennas',
    ids: /^AM-quarterwave-monopole-1kW$/,
    check: (e) => {
      const rod: SeparateAerial = { kind: 'whip', length: 75, diameter: 0.1, metal: 'copper', counterpoise: { kind: 'plane' } };
      const a = at(rod, SPEED_OF_LIGHT / 300);
      // for one ampere: field of the wire with its image, eta k (2 h) I/(4 pi d), and the power that goes with it
      const fieldPerAmpere = (ETA0 * 2 * C.abs(a.vertical)) / (2 * 300 * e.inputs.distance_m);
      return [compare(e, 'E_V_per_m', fieldPerAmpere * Math.sqrt(e.inputs.radiated_power_W / radiation(a)))];
    },
  },
  {
    figure: 'standard dummy aerial',
    against: 'IRE 1938/1948 in Terman 1943',
    errorUnit: '%',
    file: 'antennas',
    ids: /^AM-dummy-antenna-/,
    check: (e) => {
      const z = impedanceOf(
        [
          capacitor('c1', 'in', 'a', 200e-12),
          inductor('l', 'a', EARTH, 20e-6),
          resistor('r', 'a', 'b', 400),
          capacitor('c2', 'b', EARTH, 400e-12),
        ],
        e.inputs.frequency_Hz,
      );
      return [compare(e, 'R_ohm', z.re), compare(e, 'X_ohm', z.im)];
    },
  },
  {
    figure: 'radiation resistance, small loop',
    against: 'Balanis 5-24',
    errorUnit: '%',
    file: 'coils',
    ids: /^(balanis-rr1|kraus-rr|guru-rr|rr-coefficient|rr-100M-.*)$/,
    check: (e) => {
      const resistance = (areaTurns: number, wavelength: number) =>
        smallAerialResistance((2 * Math.PI * areaTurns) / wavelength, wavelength, OLD_WAVE_IMPEDANCE);
      if (e.id === 'rr-coefficient') return one(e, 'resistance for A = lambda^2', resistance(1, 1));
      if (e.id === 'balanis-rr1') return one(e, 'resistance', resistance(Math.PI * e.inputs.a_over_lambda.value ** 2, 1));
      if (e.id === 'kraus-rr') return one(e, 'resistance', resistance(e.inputs.C_over_lambda.value ** 2 / (4 * Math.PI), 1));
      const wavelength = e.inputs.c.value / e.inputs.f.value;
      const radius = e.id === 'guru-rr' ? e.inputs.R.value : e.inputs.D.value / 2;
      return one(e, 'resistance', resistance((e.inputs.N?.value ?? 1) * Math.PI * radius ** 2, wavelength));
    },
  },
  {
    figure: 'aperture of a small loop',
    against: 'Balanis example 5.3, 3/(8 pi)',
    errorUnit: '%',
    file: 'coils',
    ids: /^balanis-aperture$/,
    check: (e) => {
      const h = C.abs(smallLoopEffectiveLength(1e-3, SPEED_OF_LIGHT, { kind: 'vertical' }, FRONT).horizontal);
      return one(e, 'aperture over lambda^2', gainOf(h * h, smallAerialResistance(h, 1), 1) / (4 * Math.PI));
    },
  },
  {
    figure: 'efficiency of a small loop',
    against: 'Guru & Hiziroglu, exercise, thick-conductor loss',
    errorUnit: '%',
    file: 'coils',
    ids: /^guru-eff$/,
    check: (e) => {
      const { R: radius, a, f, sigma, c } = e.inputs;
      const wavelength = c.value / f.value;
      const radiated = smallAerialResistance((2 * Math.PI * Math.PI * radius.value ** 2) / wavelength, wavelength, OLD_WAVE_IMPEDANCE);
      const loss = (radius.value / a.value) * surfaceResistance(1 / sigma.value, f.value);
      return one(e, 'efficiency', radiated / (radiated + loss));
    },
  },
  {
    figure: 'inductance of a loop, surface current',
    against: 'mu0 R [ln(8R/a) - 2], Grover 1946',
    errorUnit: '%',
    file: 'coils',
    ids: /^loop-hf-/,
    check: (e) => one(e, 'inductance', loopInductance(1, e.inputs.R.value, e.inputs.a.value, 2 * e.inputs.a.value)),
  },
];

export const leftOut: readonly LeftOut[] = [
  {
    file: 'antennas',
    ids: /^bode-fano$/,
    reason: 'the bound on matching over a band by lossless networks; the set is matched by one tap or link, and no bound is computed',
  },
  {
    file: 'antennas',
    ids: /^AM-flat-earth-limit$/,
    reason: 'how far a flat-earth formula may be used; the aerial computes no field along the ground',
  },
];
