import { SPEED_OF_LIGHT } from '../../constants.ts';
import { term } from '../../figure.ts';
import { GivenError } from '../../given-error.ts';
import { C } from '../../numeric/index.ts';
import { EFFECTIVE_EARTH_RADIUS } from '../earth.ts';
import { fieldLevel, freeSpaceField, MONOPOLE_DIRECTIVITY } from '../free-space.ts';
import { normalise, smoothEarthField } from '../smooth-earth.ts';
import { surfaceWave } from '../surface-wave.ts';
import { groundPath, type MethodField, type Situation, type WorkedStep } from './method-field.ts';

const FLAT = 'A. Sommerfeld 1909, K. A. Norton, Proc. IRE 29 (1941) 623';
const ROUND =
  'H. Bremmer 1949, V. A. Fock 1965 (residue series), J. R. Wait 1956 (near by); as ITU-R P.368-9 without its exponential atmosphere';

/**
 * Ground wave of a vertical mast below 30 MHz: perfect ground, less what the ground eats, less what the earth's bulge hides.
 *
 * Both ends stand on the ground: up to 30 m the height of the receiving aerial changes the field by less than 0.3 dB.
 */
export function groundWaveMethod(situation: Situation): MethodField {
  const { station, site, path, where } = situation;
  if (path.distance < 1) {
    const given = `${path.distance} m away`;
    throw new GivenError(`${where}.position`, given, 'the site would be inside the mast', 'Give the distance to the foot of the mast.');
  }
  const ends = { ...groundPath(situation, 'vertical'), height1: 0, height2: 0 };
  const unit = normalise(ends);
  const q = C.conj(unit.q);
  const numericalDistance = C.mul({ re: 0, im: unit.x }, C.mul(q, q));
  const plane = 20 * Math.log10(C.abs(surfaceWave(numericalDistance)));
  // relative to free space twice the ground wave's attenuation: the mast on perfect ground already counts its own image
  const smooth = smoothEarthField(ends).decibels - 20 * Math.log10(2);
  const wavelengths = (path.distance * station.frequency) / SPEED_OF_LIGHT;
  const remarks: string[] = [];
  if (wavelengths < 0.5) remarks.push('Within half a wavelength of the mast its near field rules, and the figure is rough.');
  if (site.height > 30) remarks.push('Both ends are taken to stand on the ground: an aerial this high may receive some decibels more.');
  if (path.distance > 100e3)
    remarks.push('By night the sky wave, which is not counted, may be stronger than the ground wave at this distance.');
  remarks.push('Noise from distant lightning, strong after dark, is not counted.');
  const steps: WorkedStep[] = [unattenuated(situation)];
  if (station.polarisation === 'mixed') {
    remarks.push('Only the vertical half of the power makes a ground wave.');
    steps.push({
      name: 'verticalHalf',
      label: 'vertical half of the power',
      decibels: 10 * Math.log10(0.5),
      source: 'the ground shorts a horizontal field',
      working: () => ({ formula: '10 log10(1/2)', terms: [], source: 'the ground shorts a horizontal field' }),
    });
  }
  const terms = [
    term('d', 'distance', path.distance, 'm'),
    term('f', 'carrier', station.frequency, 'Hz'),
    term('eps_r', 'relative permittivity of the ground', site.ground.permittivity, '1'),
    term('sigma', 'conductivity of the ground', site.ground.conductivity, 'S/m'),
  ];
  steps.push(
    {
      name: 'groundLoss',
      label: 'loss in the ground',
      decibels: plane,
      source: FLAT,
      working: () => ({
        formula: '20 log10 |1 - j sqrt(pi p) exp(-p) erfc(j sqrt p)|, p = -j (k d/2)(eps_c - 1)/eps_c^2',
        terms: [...terms, term('|p|', 'numerical distance', C.abs(numericalDistance), '1')],
        source: FLAT,
        holds: 'plane, uniform ground',
      }),
    },
    {
      name: 'curvature',
      label: "the earth's curvature",
      decibels: smooth - plane,
      source: ROUND,
      working: () => ({
        formula: '20 log10 |W/F|',
        terms: [
          ...terms,
          term('x', 'normalised distance (k a/2)^(1/3) d/a', unit.x, '1'),
          term('a', 'effective earth radius', EFFECTIVE_EARTH_RADIUS, 'm'),
        ],
        source: ROUND,
        holds: 'uniform ground all the way; by day',
      }),
    },
  );
  return { method: 'ground-wave', steps, horizontalShare: 0, elevation: 0, nearness: 1, remarks };
}

/** First step: e.m.r.p. over perfect ground, 300 mV/m at 1 km for 1 kW. */
function unattenuated({ station, path }: Situation): WorkedStep {
  const source = 'ITU-R P.368-9 Annex 1, ITU-R BS.561 (e.m.r.p.: 1 kW gives 300 mV/m at 1 km)';
  return {
    name: 'freeSpace',
    label: 'unattenuated, over perfect ground',
    decibels: fieldLevel(freeSpaceField(station.power, MONOPOLE_DIRECTIVITY, path.distance)),
    source,
    working: () => ({
      formula: 'E0 = 20 log10(1e6 sqrt(eta0 D P / (4 pi)) / d)',
      terms: [
        term('P', 'effective monopole radiated power', station.power, 'W'),
        term('D', 'directivity of a short monopole', MONOPOLE_DIRECTIVITY, '1'),
        term('d', 'distance', path.distance, 'm'),
      ],
      source,
    }),
  };
}
