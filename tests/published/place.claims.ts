import {
  buildingEntryLoss,
  bullington,
  complexPermittivity,
  DIPOLE_DIRECTIVITY,
  entryLossAt,
  externalNoise,
  fieldLevel,
  firstTermDiffraction,
  freeSpaceField,
  fresnelParameter,
  type GroundPath,
  galacticNoiseFigure,
  horizonDistance,
  knifeEdgeApproximation,
  knifeEdgeLoss,
  landCurveField,
  locationVariability,
  MONOPOLE_DIRECTIVITY,
  manMadeNoiseFigure,
  noiseField,
  normaliseGroundPath,
  type Place,
  publicReferenceLevel,
  receive,
  receivingHeightCorrection,
  reflectionCoefficient,
  residueSeries,
  type Site,
  type Station,
  smoothEarthDiffraction,
  twoRay,
} from '#engine';
import type { Claim, Comparison, Entry, LeftOut } from './claim.ts';

const WAVE_SPEED = 299_792_458;
const decibels = (ratio: number): number => 20 * Math.log10(ratio);

/** A site and a station to which each record adds what it fixes. */
function placeWith(site: Partial<Site>, station: Partial<Station>, method: Place['method']): { place: Place; station: Station } {
  const fullStation: Station = {
    name: 'record',
    frequency: 100e6,
    power: 1e3,
    polarisation: 'horizontal',
    mastHeight: 0,
    position: { distance: 1e3, bearing: 0 },
    modulation: { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: true },
    programme: 'speech',
    ...station,
  };
  const fullSite: Site = {
    height: 10,
    surroundings: 'open',
    ground: { permittivity: 22, conductivity: 0.003 },
    radioNoise: 'rural',
    ...site,
  };
  return { place: { name: 'record', site: fullSite, method, stations: [fullStation] }, station: fullStation };
}

function fieldAt(site: Partial<Site>, station: Partial<Station>, method: Place['method']): number {
  const made = placeWith(site, station, method);
  return receive(made.place, made.station).field;
}

function groundPath({ inputs }: Entry): GroundPath {
  return {
    distance: inputs.distance_m,
    height1: inputs.h1_m,
    height2: inputs.h2_m,
    frequency: inputs.frequency_Hz,
    ground: { permittivity: inputs.eps_r, conductivity: inputs.sigma_S_per_m },
    polarisation: inputs.polarisation === 'h' ? 'horizontal' : 'vertical',
    earthRadius: inputs.effective_earth_radius_m,
  };
}

const compare = (what: string, got: number, expected: number, tolerance: Comparison['tolerance']): Comparison => ({
  what,
  got,
  expected,
  tolerance,
});

/** Medium wave: the record's monopole as e.m.r.p. over its ground. */
function groundWaveField({ inputs }: Entry, power: number): number {
  return fieldAt(
    { height: 0, ground: { permittivity: inputs.eps_r, conductivity: inputs.sigma_S_per_m } },
    {
      frequency: inputs.frequency_Hz,
      power,
      polarisation: 'vertical',
      position: { distance: inputs.distance_m, bearing: 0 },
      modulation: { kind: 'am', depth: 0.8 },
    },
    'auto',
  );
}

export const claims: readonly Claim[] = [
  {
    figure: 'field in free space',
    against: 'ITU-R P.525',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^P525-field-1kW$/,
    check: ({ inputs, expected, tolerance }) => [
      compare('field strength level', fieldLevel(freeSpaceField(inputs.eirp_W, 1, inputs.distance_m)), expected.E_dBuV_per_m, {
        abs: tolerance.E_dBuV_per_m,
      }),
    ],
  },
  {
    figure: 'field in free space',
    against: 'ITU-R P.525, e.r.p. over a half-wave dipole',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^freespace-erp-/,
    check: ({ inputs, expected, tolerance }) => {
      const field = fieldAt({ height: 0 }, { power: inputs.erp_W, position: { distance: inputs.distance_m, bearing: 0 } }, 'free-space');
      return [compare('field strength level', fieldLevel(field), expected.E_dBuV_per_m, { abs: tolerance.E_dBuV_per_m })];
    },
  },
  {
    figure: 'smooth-earth diffraction',
    against: 'ITU-R P.526 section 3',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^P526-smooth-/,
    check: (entry) => {
      const { expected, tolerance } = entry;
      const path = groundPath(entry);
      const first = firstTermDiffraction(path);
      return [
        compare('loss', smoothEarthDiffraction(path), expected.loss_P526_dB, { abs: tolerance.loss_P526_dB }),
        compare('first term', first.loss, expected.first_term_dB, { abs: tolerance.first_term_dB }),
        // the record's intermediate figures carry no tolerance of their own: its last printed digit
        compare('distance term', first.distanceTerm, expected.F_X_dB, { abs: 1e-3 }),
        compare('height gain, mast', first.heightGain1, expected.G_Y1_dB, { abs: 1e-3 }),
        compare('height gain, site', first.heightGain2, expected.G_Y2_dB, { abs: 1e-3 }),
      ];
    },
  },
  {
    figure: 'horizon',
    against: 'ITU-R P.526 eq. 21',
    errorUnit: 'm',
    file: 'antennas',
    ids: /^P526-smooth-/,
    check: (entry) => {
      const path = groundPath(entry);
      return [compare('distance', horizonDistance(path.height1, path.height2), entry.expected.d_los_m, { abs: entry.tolerance.d_los_m })];
    },
  },
  {
    figure: 'smooth earth, residue series',
    against: 'full residue series computed independently',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^P526-smooth-/,
    check: (entry) => {
      const unit = normaliseGroundPath(groundPath(entry));
      const loss = -decibels(2 * residueSeries(unit.x, unit.q, unit.y1, unit.y2));
      return [compare('loss', loss, entry.expected.residue_series_loss_dB, { abs: entry.tolerance.residue_series_loss_dB })];
    },
  },
  {
    figure: 'knife edge',
    against: 'Fresnel integrals; ITU-R P.526 approximation',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^knifeedge-J-/,
    check: ({ inputs, expected, tolerance }) => {
      const exact = compare('exact', knifeEdgeLoss(inputs.nu), expected.J_exact_dB, { abs: tolerance.J_exact_dB });
      // below -0.78 the Recommendation takes the loss as none; the record prints what the formula would give there
      if (inputs.nu < -0.78) return [exact];
      return [exact, compare('approximation', knifeEdgeApproximation(inputs.nu), expected.J_approx_dB, { abs: tolerance.J_approx_dB })];
    },
  },
  {
    figure: 'two edges by one',
    against: "Bullington's construction, ITU-R P.526 section 4.5.1",
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^double-edge-/,
    // the columns of Vogler, Deygout and Epstein and Peterson are rival methods that the engine does not use
    check: ({ inputs, expected, tolerance }) => {
      const profile = {
        distance: [0, ...inputs.edge_positions_m, inputs.distance_m],
        height: [0, ...inputs.edge_heights_m, 0],
      };
      const wavelength = WAVE_SPEED / inputs.frequency_Hz;
      const edge = bullington(profile, inputs.h1_m, inputs.h2_m, wavelength, Number.POSITIVE_INFINITY);
      const [first, second] = inputs.edge_positions_m;
      const nu1 = fresnelParameter(
        inputs.edge_heights_m[0] - (inputs.h1_m + ((inputs.h2_m - inputs.h1_m) * first) / inputs.distance_m),
        first,
        inputs.distance_m - first,
        wavelength,
      );
      const nu2 = fresnelParameter(
        inputs.edge_heights_m[1] - (inputs.h1_m + ((inputs.h2_m - inputs.h1_m) * second) / inputs.distance_m),
        second,
        inputs.distance_m - second,
        wavelength,
      );
      return [
        compare('Bullington', edge.edgeLoss, expected.bullington_dB, { abs: tolerance.bullington_dB }),
        compare('P.526', edge.loss, expected.P526_bullington_dB, { abs: tolerance.P526_bullington_dB }),
        compare('nu of the equivalent edge', edge.nu!, expected.nu_bullington, { abs: 1e-5 }),
        compare('nu of the first edge', nu1, expected.nu1, { abs: 1e-5 }),
        compare('nu of the second edge', nu2, expected.nu2, { abs: 1e-5 }),
      ];
    },
  },
  {
    figure: 'ground reflection',
    against: 'Fresnel coefficients, ITU-R P.527 ground',
    errorUnit: '1',
    file: 'antennas',
    ids: /^reflection-/,
    check: ({ inputs, expected, tolerance }) => {
      const permittivity = complexPermittivity({ permittivity: inputs.eps_r, conductivity: inputs.sigma_S_per_m }, inputs.frequency_Hz);
      const h = reflectionCoefficient(permittivity, inputs.grazing_angle_rad, 'horizontal');
      const v = reflectionCoefficient(permittivity, inputs.grazing_angle_rad, 'vertical');
      return [
        compare('horizontal', Math.hypot(h.re, h.im), expected.H_abs, { abs: tolerance.H_abs }),
        compare('vertical', Math.hypot(v.re, v.im), expected.V_abs, { abs: tolerance.V_abs }),
        // the phases carry no tolerance: real and imaginary part, within that of the magnitude
        compare('horizontal, real', h.re, expected.H_abs * Math.cos(expected.H_phase_rad), { abs: tolerance.H_abs }),
        compare('horizontal, imaginary', h.im, expected.H_abs * Math.sin(expected.H_phase_rad), { abs: tolerance.H_abs }),
        compare('vertical, real', v.re, expected.V_abs * Math.cos(expected.V_phase_rad), { abs: tolerance.V_abs }),
        compare('vertical, imaginary', v.im, expected.V_abs * Math.sin(expected.V_phase_rad), { abs: tolerance.V_abs }),
      ];
    },
  },
  {
    figure: 'two rays over plane earth',
    against: '2 sin(2 pi h1 h2/(lambda d))',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^tworay-/,
    check: ({ inputs, expected, tolerance }) => {
      const rays = twoRay({
        distance: inputs.distance_m,
        height1: inputs.h1_m,
        height2: inputs.h2_m,
        frequency: inputs.frequency_Hz,
        ground: { permittivity: 2, conductivity: 1e7 },
        polarisation: 'horizontal',
        earthRadius: Number.POSITIVE_INFINITY,
      })!;
      const factor = Math.hypot(rays.factor.re, rays.factor.im);
      const free = freeSpaceField(inputs.erp_W, DIPOLE_DIRECTIVITY, Math.hypot(inputs.distance_m, inputs.h1_m - inputs.h2_m));
      return [
        compare('against free space', decibels(factor), expected.relative_free_space_dB, { abs: tolerance.E_dBuV_per_m }),
        compare('field strength level', fieldLevel(factor * free), expected.E_dBuV_per_m, { abs: tolerance.E_dBuV_per_m }),
      ];
    },
  },
  {
    figure: 'broadcast curves, land, 100 MHz',
    against: 'ITU-R P.1546, 50 % of time and places',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^P1546-100MHz-/,
    check: ({ inputs, expected, tolerance }) => {
      const curve = landCurveField(inputs.distance_m, inputs.h1_m, inputs.frequency_Hz);
      const level = curve.at100MHz + curve.frequencyStep + 10 * Math.log10(inputs.erp_W / 1e3);
      return [compare('field strength level', level, expected.E_dBuV_per_m, { abs: tolerance.E_dBuV_per_m })];
    },
  },
  {
    figure: 'coverage contours',
    against: 'FCC F(50,50), 47 CFR 73.211 and 73.333',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^FCC-F5050-/,
    check: ({ inputs, expected, tolerance }) => {
      const field = fieldAt(
        { height: inputs.h2_m },
        {
          frequency: inputs.frequency_Hz,
          power: inputs.erp_W,
          mastHeight: inputs.h1_m,
          position: { distance: inputs.distance_m, bearing: 0 },
        },
        'broadcast-curves',
      );
      return [compare('field strength level', fieldLevel(field), expected.E_dBuV_per_m, { abs: tolerance.E_dBuV_per_m })];
    },
  },
  {
    figure: 'receiving-height correction',
    against: 'ITU-R P.1546 Annex 5 section 9',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^P1546-h2-/,
    check: ({ id, inputs, expected, tolerance }) => {
      const surroundings = id.includes('rural') ? 'open' : 'urban';
      const correction = receivingHeightCorrection(inputs.h2_m, surroundings, inputs.clutter_m, inputs.frequency_Hz);
      return [compare('correction', correction, expected.correction_dB, { abs: tolerance.correction_dB })];
    },
  },
  {
    figure: 'location variability',
    against: 'ITU-R P.1546, analogue broadcasting',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^P1546-sigmaL-FM$/,
    check: ({ inputs, expected, tolerance }) => [
      compare('standard deviation', locationVariability(inputs.frequency_Hz), expected.sigma_dB, { abs: tolerance.sigma_dB }),
    ],
  },
  {
    figure: 'external noise',
    against: 'ITU-R P.372 median',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^P372-/,
    check: ({ id, inputs, expected, tolerance }) => {
      const kind = id.replace(/^P372-|-100MHz$/g, '') as 'city' | 'rural' | 'quiet-rural' | 'galactic';
      const f = inputs.frequency_Hz;
      const figure = kind === 'galactic' ? galacticNoiseFigure(f) : manMadeNoiseFigure(kind, f);
      const level = noiseField(figure, f, inputs.bandwidth_Hz, 'dipole');
      const rows = [
        compare('noise figure', figure, expected.Fa_dB, { abs: tolerance.Fa_dB }),
        compare('noise field', level, expected.En_halfwave_dipole_dBuV_per_m, { abs: tolerance.En_halfwave_dipole_dBuV_per_m }),
      ];
      // where man-made noise lies under the galaxy the engine answers with the galaxy and its deciles
      const answer = externalNoise(kind === 'galactic' ? 'quiet-rural' : kind, f);
      if (answer.figure === figure) {
        rows.push(compare('upper decile', answer.upperDecile, expected.upper_decile_dB, { abs: 0.05 }));
        rows.push(compare('lower decile', answer.lowerDecile, expected.lower_decile_dB, { abs: 0.05 }));
      }
      return rows;
    },
  },
  {
    figure: 'building entry loss',
    against: 'ITU-R P.2109',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^P2109-/,
    check: ({ inputs, expected, tolerance }) => {
      const entry = buildingEntryLoss(
        { kind: inputs.building, probability: inputs.probability },
        inputs.frequency_Hz,
        inputs.elevation_rad,
      );
      const direct = entryLossAt(inputs.building, entry.deviate, inputs.frequency_Hz, inputs.elevation_rad);
      return [
        compare('loss', entry.loss, expected.loss_dB, { abs: tolerance.loss_dB }),
        compare('loss by its deviate', direct, expected.loss_dB, { abs: tolerance.loss_dB }),
      ];
    },
  },
  {
    figure: 'public exposure reference level',
    against: 'ICNIRP 2020',
    errorUnit: 'V/m',
    file: 'antennas',
    ids: /^ICNIRP2020-public-wholebody-/,
    check: ({ inputs, expected }) => [compare('level', publicReferenceLevel(inputs.frequency_Hz), expected.E_V_per_m, { abs: 0 })],
  },
  {
    figure: 'distance to the exposure level',
    against: 'ITU-R P.525 with ICNIRP 2020',
    errorUnit: '%',
    file: 'antennas',
    ids: /^exposure-distance-/,
    check: ({ inputs, expected, tolerance }) => {
      const { place, station } = placeWith(
        { height: 0 },
        { power: inputs.erp_W, position: { distance: expected.distance_m, bearing: 0 } },
        'free-space',
      );
      // the field falls as 1/d: where the ratio is r, the level is reached at r d
      const { exposure } = receive(place, station);
      return [compare('distance', exposure.ratio * expected.distance_m, expected.distance_m, { rel: tolerance.distance_m })];
    },
  },
  {
    figure: 'medium-wave mast, perfect ground',
    against: 'ITU-R P.368 and 47 CFR 73.184',
    errorUnit: '%',
    file: 'antennas',
    ids: /^AM-(short-monopole|quarterwave-monopole)-1kW$/,
    check: ({ id, inputs, expected, tolerance }) => {
      // a quarter-wave mast has directivity 3.28 where a short one has 3: its e.m.r.p. is greater by the ratio (Balanis sec. 4.6)
      const gain = id.startsWith('AM-quarterwave') ? 3.28 / MONOPOLE_DIRECTIVITY : 1;
      const field = fieldAt(
        { height: 0 },
        {
          frequency: 1e6,
          power: gain * inputs.radiated_power_W,
          polarisation: 'vertical',
          position: { distance: inputs.distance_m, bearing: 0 },
          modulation: { kind: 'am', depth: 0.8 },
        },
        'free-space',
      );
      return [compare('field', field, expected.E_V_per_m, { rel: tolerance.E_V_per_m })];
    },
  },
  {
    figure: 'ground wave, medium wave',
    against: 'Sommerfeld-Norton and residue series computed independently',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^AM-groundwave-/,
    check: (entry) => [
      compare('field strength level', fieldLevel(groundWaveField(entry, entry.inputs.radiated_power_W)), entry.expected.E_dBuV_per_m, {
        abs: entry.tolerance.E_dBuV_per_m,
      }),
    ],
  },
  {
    figure: 'field on the 1 mV/m contour, medium wave',
    against: 'readings of the curves of 47 CFR 73.184',
    errorUnit: '%',
    file: 'antennas',
    ids: /^AM-FCC-1mV-/,
    check: (entry) => [
      compare('field', groundWaveField(entry, (entry.inputs.radiated_power_W * 3.28) / MONOPOLE_DIRECTIVITY), entry.expected.E_V_per_m, {
        rel: entry.tolerance.E_V_per_m,
      }),
    ],
  },
];

export const leftOut: readonly LeftOut[] = [
  {
    file: 'antennas',
    ids: /^knifeedge-two-grazing$/,
    reason: "result of Vogler's multiple-edge integral; the engine follows P.526, which replaces all edges by Bullington's one",
  },
  {
    file: 'antennas',
    ids: /^AM-flat-earth-limit$/,
    reason: 'rule for when plane-earth theory may be used; the engine adds curvature at every distance and needs no such limit',
  },
  {
    file: 'antennas',
    ids: /^BS412-(min|PR)-/,
    reason:
      'planning limits and protection ratios for superheterodyne receivers: inputs to no computation here; what a set without a battery needs is computed instead',
  },
  {
    file: 'antennas',
    ids: /^FCC-DU$/,
    reason: 'allotment rule for powered receivers; interference is computed from the stations themselves',
  },
  { file: 'antennas', ids: /^EN60728-1-FM-outlet$/, reason: 'levels at a cable outlet: no part of the path from mast to ear' },
  {
    file: 'antennas',
    ids: /^ICNIRP1998-|^ICNIRP2020-public-local-/,
    reason:
      'superseded edition, and the local limit of 6 minutes: the engine compares with the whole-body level of 2020, which is stricter',
  },
];
