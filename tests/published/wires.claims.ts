import {
  type AerialWire,
  brent,
  C,
  discretise,
  frontToBack,
  impedanceMatrix,
  layOut,
  SPEED_OF_LIGHT,
  strongestDirection,
  type WireStructure,
  wireAerialOf,
  wireGain,
} from '#engine';
import type { Claim, Comparison, Entry, LeftOut } from './claim.ts';

/** Comparison in the form of antennas.json: one tolerance by name of the value, absolute or relative. */
function compare(entry: Entry, name: string, got: number): Comparison {
  const allowed = (entry.tolerance[name] ?? entry.tolerance.all) as number;
  return { what: name, got, expected: entry.expected[name] as number, tolerance: { [entry.tolerance.type as string]: allowed } };
}

const FREE = { kind: 'free-space' } as const;
const point = (x: number, y: number, z: number) => ({ x, y, z });
/** The tables are for perfect conductors. */
const wire = (from: AerialWire['from'], to: AerialWire['to'], radius: number): AerialWire => ({
  from,
  to,
  diameter: 2 * radius,
  metal: 'lossless',
});

function impedanceOf(structure: Omit<WireStructure, 'loads'>, frequency: number, segments: number | null = null): C.Complex {
  return wireAerialOf({ ...structure, loads: [] }, segments).at(frequency, { azimuth: 0, elevation: 0 }).impedance;
}
const impedanceRows = (entry: Entry, z: C.Complex): readonly Comparison[] => [compare(entry, 'R_ohm', z.re), compare(entry, 'X_ohm', z.im)];

const level = (length: number, height: number, radius: number): AerialWire =>
  wire(point(-length / 2, 0, height), point(length / 2, 0, height), radius);
const dipole = (length: number, radius: number): Omit<WireStructure, 'loads'> => ({
  wires: [level(length, 0, radius)],
  feed: { wire: 0, at: 0.5 },
  ground: FREE,
});

/** Length at which the reactance of a dipole passes zero rising, in a bracket of lengths [wavelengths]. */
function resonance(lengthToDiameter: number, from: number, to: number): { readonly length: number; readonly resistance: number } {
  const z = (length: number) => impedanceOf(dipole(length, length / lengthToDiameter / 2), SPEED_OF_LIGHT);
  const length = brent((l) => z(l).im, from, to, 1e-6)!;
  return { length, resistance: z(length).re };
}

/** Gain forward, front-to-back and impedance of a beam of parallel elements along x, pointing east. */
function beam(entry: Entry, lengths: readonly number[], positions: readonly number[], radius: number) {
  const structure: WireStructure = {
    wires: lengths.map((l, i) => wire(point(positions[i]!, -l / 2, 0), point(positions[i]!, l / 2, 0), radius)),
    feed: { wire: entry.inputs.driven_index as number, at: 0.5 },
    loads: [],
    ground: FREE,
  };
  const { discretised, solution } = wireAerialOf(structure, null).solved(entry.inputs.frequency_Hz as number);
  const east = { azimuth: Math.PI / 2, elevation: 0 };
  return {
    gain: wireGain(discretised, solution, east).total!,
    frontToBack: frontToBack(discretised, solution, east)!,
    impedance: C.inv(solution.admittance),
  };
}

/** Regular polygon of the area of a circle, fed at a corner. */
function polygon(sides: number, circleRadius: number, wireRadius: number): WireStructure {
  const step = (2 * Math.PI) / sides;
  const r = circleRadius * Math.sqrt(step / Math.sin(step));
  const corner = (i: number) => point(r * Math.cos(step * (i % sides)), r * Math.sin(step * (i % sides)), 0);
  return {
    wires: Array.from({ length: sides }, (_, i) => wire(corner(i), corner(i + 1), wireRadius)),
    feed: { wire: 0, at: 0 },
    loads: [],
    ground: FREE,
  };
}

export const claims: readonly Claim[] = [
  {
    figure: 'dipole impedance, method of moments',
    against: 'exact-kernel calculation; King & Middleton 1946',
    errorUnit: 'ohm',
    file: 'antennas',
    ids: /^dipole-(exactkernel|KM)-/,
    check: (e) => impedanceRows(e, impedanceOf(dipole(e.inputs.length_m, e.inputs.wire_radius_m), e.inputs.frequency_Hz)),
  },
  {
    figure: 'resonant length and resistance of a dipole',
    against: 'Stutzman & Thiele; Balanis table 9.1',
    errorUnit: '%',
    file: 'antennas',
    ids: /^dipole-(resonant-length-Ld(5000|10)$|resonance1-Balanis-Ld)/,
    check: (e) => {
      const { length, resistance } = resonance(e.inputs.length_to_diameter, 0.4, 0.495);
      const rows = [compare(e, 'resonant_length_m', length)];
      return e.expected.R_ohm === undefined ? rows : [...rows, compare(e, 'R_ohm', resistance)];
    },
  },
  {
    // one base a dipole is a sinusoidal current, the assumption of the induced-EMF method
    figure: 'mutual impedance of half-wave dipoles, one sinusoid each',
    against: 'Carter 1932',
    errorUnit: 'ohm',
    file: 'antennas',
    ids: /^mutual-halfwave-/,
    check: (e) => {
      const { length_m: length, spacing_m: spacing } = e.inputs;
      const other = wire(point(-length / 2, spacing, 0), point(length / 2, spacing, 0), 1e-5);
      const structure = { ...dipole(length, 1e-5), loads: [] };
      const both = { ...structure, wires: [...structure.wires, other] };
      const layout = layOut(both);
      const z = impedanceMatrix(discretise(both, layout, [1, 1, 2]), e.inputs.frequency_Hz);
      return impedanceRows(e, { re: z.re[1]!, im: z.im[1]! });
    },
  },
  {
    figure: 'half-wave dipole over perfect ground, one sinusoid',
    against: 'image theory with Carter 1932',
    errorUnit: 'ohm',
    file: 'antennas',
    ids: /^dipole-over-PEC-/,
    check: (e) => {
      const { length_m: length, height_m: height, wire_radius_m: radius } = e.inputs;
      return impedanceRows(
        e,
        impedanceOf(
          { wires: [level(length, height, radius)], feed: { wire: 0, at: 0.5 }, ground: { kind: 'perfect' } },
          e.inputs.frequency_Hz,
          2,
        ),
      );
    },
  },
  {
    figure: 'V dipole impedance',
    against: 'independent moment-method calculation',
    errorUnit: 'ohm',
    file: 'antennas',
    ids: /^Vdipole-/,
    check: (e) => {
      const { arm_length_m: arm, included_angle_rad: angle, wire_radius_m: radius } = e.inputs;
      const tip = (side: number) => point(side * arm * Math.sin(angle / 2), arm * Math.cos(angle / 2), 0);
      const wires = [wire(point(0, 0, 0), tip(1), radius), wire(point(0, 0, 0), tip(-1), radius)];
      return impedanceRows(e, impedanceOf({ wires, feed: { wire: 0, at: 0 }, ground: FREE }, e.inputs.frequency_Hz));
    },
  },
  {
    figure: 'rod on four radials, resistance',
    against: 'handbook value',
    errorUnit: 'ohm',
    file: 'antennas',
    ids: /^groundplane-4radials-/,
    check: (e) => {
      const { height_m: height, radial_length_m: radial, wire_radius_m: radius } = e.inputs;
      const foot = point(0, 0, 0);
      const out = [point(radial, 0, 0), point(-radial, 0, 0), point(0, radial, 0), point(0, -radial, 0)];
      const wires = [wire(foot, point(0, 0, height), radius), ...out.map((p) => wire(foot, p, radius))];
      return [compare(e, 'R_ohm', impedanceOf({ wires, feed: { wire: 0, at: 0 }, ground: FREE }, e.inputs.frequency_Hz).re)];
    },
  },
  {
    figure: 'beam gain and front-to-back',
    against: 'Stutzman & Thiele, equally spaced beams',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^yagi-ST-/,
    check: (e) => {
      const b = beam(e, e.inputs.element_lengths_m, e.inputs.element_positions_m, e.inputs.wire_radius_m);
      return [compare(e, 'gain_dBi', b.gain), compare(e, 'front_to_back_dB', b.frontToBack)];
    },
  },
  {
    figure: 'beam impedance',
    against: 'Stutzman & Thiele, equally spaced beams',
    errorUnit: 'ohm',
    file: 'antennas',
    ids: /^yagi-ST-/,
    check: (e) => impedanceRows(e, beam(e, e.inputs.element_lengths_m, e.inputs.element_positions_m, e.inputs.wire_radius_m).impedance),
  },
  {
    figure: 'beam gain, measured on a range',
    against: 'NBS Technical Note 688',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^yagi-NBS688-/,
    check: (e) => {
      const wavelength = SPEED_OF_LIGHT / (e.inputs.frequency_Hz as number);
      const metres = (v: readonly number[]) => v.map((x) => x * wavelength);
      const radius = (e.inputs.element_diameter_lambda * wavelength) / 2;
      const b = beam(e, metres(e.inputs.element_lengths_lambda), metres(e.inputs.element_positions_lambda), radius);
      // over a half-wave dipole of directivity 1.641 (2.15 dB)
      return [compare(e, 'gain_dBd', b.gain - 2.15)];
    },
  },
  {
    figure: 'six-element beam directivity',
    against: 'Cheng & Chen 1973, Chen & Cheng 1975',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^yagi-ChenCheng-/,
    check: (e) => [
      compare(e, 'directivity_dBi', beam(e, e.inputs.element_lengths_m, e.inputs.element_positions_m, e.inputs.wire_radius_m).gain),
    ],
  },
  {
    // an infinitely narrow gap excites all harmonics and the series has no limit: the record is of 5 to 11 terms, and a polygon of n sides carries
    // about n/2 of them fully; the thick wire's record is met at the resolution it was made at
    figure: 'one-wave round loop impedance',
    against: 'Storer 1956, Wu 1962 Fourier series',
    errorUnit: 'ohm',
    file: 'antennas',
    ids: /^loop-onewave-Omega/,
    check: (e) => {
      const { loop_radius_m: b, wire_radius_m: a, frequency_Hz: f } = e.inputs;
      const sides = a / b > 0.01 ? 12 : 24;
      return impedanceRows(e, impedanceOf(polygon(sides, b, a), f, sides));
    },
  },
  {
    figure: 'one-wave loop directivity',
    against: 'Balanis fig. 5.15; Stutzman & Thiele',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^loop-(onewave|square-onewave)-directivity$/,
    check: (e) => {
      const side = e.inputs.side_m as number | undefined;
      const structure: WireStructure =
        side === undefined
          ? polygon(24, e.inputs.circumference_m / (2 * Math.PI), 1e-3)
          : { ...polygon(4, side / Math.sqrt(Math.PI), e.inputs.wire_radius_m), feed: { wire: 0, at: 0.5 } };
      const { discretised, solution } = wireAerialOf(structure, null).solved(e.inputs.frequency_Hz);
      return [compare(e, 'D_dBi', strongestDirection(discretised, solution).gain.total!)];
    },
  },
  {
    // the record is of conductors infinitely thin and close
    figure: 'folded dipole resistance at resonance',
    against: 'four times a dipole (Balanis sec. 9.5)',
    errorUnit: '%',
    file: 'antennas',
    ids: /^folded-dipole$/,
    check: (e) => {
      const [radius, spacing] = [1e-5, 0.001];
      const z = (length: number) => {
        const [h, d] = [length / 2, spacing];
        const corners = [point(-h, 0, 0), point(h, 0, 0), point(h, d, 0), point(0, d, 0), point(-h, d, 0)];
        const wires = corners.map((c, i) => wire(c, corners[(i + 1) % 5]!, radius));
        return impedanceOf({ wires, feed: { wire: 0, at: 0.5 }, ground: FREE }, e.inputs.frequency_Hz);
      };
      const resonant = brent((l) => z(l).im, 0.44, 0.5, 1e-6)!;
      return [compare(e, 'R_ohm', z(resonant).re)];
    },
  },
];

export const leftOut: readonly LeftOut[] = [
  {
    file: 'antennas',
    ids: /^dipole-resonant-length-Ld50$/,
    reason:
      'we find 0.468 wavelength, 0.0006 under the least allowed: the table rounds the shortening to 5 %. Hallen with the exact kernel gives 0.4665 to 0.4673 (tests/reference/wires), the exact-kernel value of antennas.md section 1.2 for 0.48 puts it at 0.469, and Balanis (claimed) at 0.4706',
  },
  {
    file: 'antennas',
    ids: /^dipole-resonance3-Balanis-Ld/,
    reason:
      "the book's third resonance is three times its first. Hallen with the exact kernel gives 1.482 wavelengths and 105.7 ohm for length/diameter 5000, 1.474 and 105.9 for 500, none that stands still for 50 (tests/reference/wires); we find 1.482, 105.7 and 1.474, 105.7; a unit test holds us to them",
  },
];
