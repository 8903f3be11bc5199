import { AWG_RANGE, awgDiameter, SWG_RANGE, swgDiameter } from './wire-gauge.ts';

/** How a unit turns into SI: by a power of ten, which loses no digit, or by a rule. */
export type Unit = { readonly power: number } | { readonly toSi: (value: number) => number | null; readonly rangeWords?: string };

/** What a quantity may be, and how it is read and written. */
export interface Dimension {
  /** `a capacitance` */
  readonly label: string;
  /** the unit of plain numbers, as it is written: `F`; empty for pure numbers */
  readonly symbol: string;
  /** other spellings of that unit which take prefixes too */
  readonly spellings: readonly string[];
  /** prefixes that the unit takes */
  readonly prefixes: string;
  /** whether the prefix alone will do: `4.7n` */
  readonly prefixAlone: boolean;
  /** further units, blanks left out */
  readonly units: Readonly<Record<string, Unit>>;
  /** whether a text without unit is taken to be in the plain unit; a text is refused where people mean different units by it */
  readonly bareText: boolean;
  readonly examples: readonly [string, ...string[]];
}

const MICRO_TO_GIGA = 'pnumkKMG';
const factor = (f: number): Unit => ({ toSi: (x) => x * f });
/** Whole tenths of a millimetre keep three quarters of an inch at 19.05 mm to the last bit. */
const tenthsOfMillimetre = (n: number): Unit => ({ toSi: (x) => (x * n) / 1e4 });
const NO_UNITS = {};

/** 10^(x/10) times the reference. */
const powerLevel = (reference: number): Unit => ({ toSi: (x) => reference * 10 ** (x / 10) });
const LENGTHS: Readonly<Record<string, Unit>> = {
  in: tenthsOfMillimetre(254),
  inch: tenthsOfMillimetre(254),
  inches: tenthsOfMillimetre(254),
  '"': tenthsOfMillimetre(254),
  ft: tenthsOfMillimetre(3048),
  foot: tenthsOfMillimetre(3048),
  feet: tenthsOfMillimetre(3048),
  "'": tenthsOfMillimetre(3048),
  thou: factor(25.4e-6),
  mil: factor(25.4e-6),
  yd: factor(0.9144),
  mi: factor(1609.344),
  mile: factor(1609.344),
  miles: factor(1609.344),
};
const gauge = (diameter: (n: number) => number | null, range: { from: number; to: number }): Unit => ({
  toSi: (n) => (Number.isInteger(n) && n >= range.from && n <= range.to ? diameter(n) : null),
  rangeWords: `the gauge has whole numbers from ${range.from < 0 ? '4/0' : range.from} to ${range.to}`,
});
const DEGREE = Math.PI / 180;
const ANGLES: Readonly<Record<string, Unit>> = {
  '°': factor(DEGREE),
  deg: factor(DEGREE),
  degree: factor(DEGREE),
  degrees: factor(DEGREE),
  rad: { power: 0 },
  radian: { power: 0 },
  radians: { power: 0 },
};
const angle = (label: string, bareText: boolean, examples: [string, ...string[]]): Dimension => ({
  label,
  symbol: 'rad',
  spellings: [],
  prefixes: '',
  prefixAlone: false,
  units: ANGLES,
  bareText,
  examples,
});
const level = (label: string, symbol: string, units: Readonly<Record<string, Unit>>, examples: [string, ...string[]]): Dimension => ({
  label,
  symbol,
  spellings: [],
  prefixes: '',
  prefixAlone: false,
  units,
  bareText: 'dB' in units,
  examples,
});
const DB: Readonly<Record<string, Unit>> = { dB: { power: 0 } };
const prefixed = (
  label: string,
  symbol: string,
  spellings: readonly string[],
  examples: [string, ...string[]],
  more: Partial<Dimension> = {},
): Dimension => ({
  label,
  symbol,
  spellings,
  prefixes: MICRO_TO_GIGA,
  prefixAlone: true,
  units: NO_UNITS,
  bareText: false,
  examples,
  ...more,
});
const LENGTH = { prefixes: 'numcdkK', prefixAlone: false, units: LENGTHS };
const METRES = ['metre', 'metres', 'meter', 'meters'];

/** Every dimension that a description can hold. Plain numbers are in `symbol`; powers, voltages and fields are rms. */
export const DIMENSIONS = {
  length: prefixed('a length', 'm', METRES, ['10 mm', '1 1/4 in', '20 km'], LENGTH),
  diameter: prefixed('a diameter', 'm', METRES, ['1 mm', '18 AWG', '3/4 in'], {
    ...LENGTH,
    units: { ...LENGTHS, AWG: gauge(awgDiameter, AWG_RANGE), SWG: gauge(swgDiameter, SWG_RANGE) },
  }),
  turns: prefixed('a number of turns', '', [], ['5 1/2', '2 1/2 turns'], {
    prefixes: '',
    prefixAlone: false,
    units: { turn: { power: 0 }, turns: { power: 0 } },
    bareText: true,
  }),
  ratio: prefixed('a pure number', '', [], ['0.8', '80 %', '20:1'], {
    prefixes: '',
    prefixAlone: false,
    units: { '%': { power: -2 }, percent: { power: -2 } },
    bareText: true,
  }),
  capacitance: prefixed('a capacitance', 'F', ['farad', 'farads'], ['12 pF', '1 nF'], {
    prefixes: 'pnumk',
    units: { fF: { power: -15 }, mmf: { power: -12 }, mmfd: { power: -12 }, uuF: { power: -12 }, mfd: { power: -6 } },
  }),
  inductance: prefixed('an inductance', 'H', ['henry', 'henries', 'henrys'], ['120 nH', '2.5 H']),
  resistance: prefixed('a resistance', 'ohm', ['ohms', 'R'], ['470 k', '32 ohm', '4k7'], {
    prefixes: 'mkKMG',
    units: { uohm: { power: -6 } },
  }),
  frequency: prefixed('a frequency', 'Hz', ['hertz', 'c/s'], ['98.4 MHz', '909 kHz'], { prefixes: 'kKMG' }),
  power: prefixed('a power', 'W', ['watt', 'watts'], ['10 kW', '30 dBW'], {
    units: { dBW: powerLevel(1), dBm: powerLevel(1e-3), dBk: powerLevel(1e3) },
  }),
  voltage: prefixed('a voltage', 'V', ['volt', 'volts'], ['0.4 V', '20 mV']),
  current: prefixed('a current', 'A', ['amp', 'amps', 'ampere', 'amperes'], ['3 uA', '10 nA'], { prefixes: 'fpnumkK' }),
  field: prefixed('a field strength', 'V/m', [], ['55 dBuV/m', '2 mV/m'], {
    prefixes: 'numkK',
    prefixAlone: false,
    units: { 'dBuV/m': { toSi: (x) => 1e-6 * 10 ** (x / 20) }, dBu: { toSi: (x) => 1e-6 * 10 ** (x / 20) } },
  }),
  conductivity: prefixed('a conductivity', 'S/m', [], ['5 mS/m', '0.01 S/m'], { prefixes: 'um', prefixAlone: false }),
  time: prefixed('a time', 's', ['second', 'seconds', 'sec'], ['50 us', '75 us'], { prefixes: 'pnum', prefixAlone: false }),
  temperature: prefixed('a temperature', 'K', ['kelvin'], ['20 °C', '68 F', '293 K'], {
    prefixes: '',
    prefixAlone: false,
    units: {
      '°C': { toSi: celsius },
      C: { toSi: celsius },
      degC: { toSi: celsius },
      '°F': { toSi: fahrenheit },
      F: { toSi: fahrenheit },
      degF: { toSi: fahrenheit },
    },
  }),
  energy: prefixed('an energy', 'eV', [], ['0.69 eV'], { prefixes: 'mk', prefixAlone: false }),
  transconductanceFactor: prefixed('a transconductance factor', 'A/V^2', ['A/V2'], ['1.5 mA/V^2'], { prefixes: 'num', prefixAlone: false }),
  angle: angle('an angle', false, ['180°', '3.14 rad']),
  bearing: angle('a bearing', true, ['NNE', '22.5°']),
  latitude: angle('a latitude', true, ['52°30\'15"N', '52.504']),
  longitude: angle('a longitude', true, ["1°30'W", '-1.5']),
  gain: level('a gain over isotropic', 'dBi', { dBd: { toSi: (x) => x + DIPOLE_GAIN } }, ['2.15 dBi', '6 dBd']),
  decibels: level('a level in decibels', 'dB', DB, ['12 dB']),
  soundLevel: level('a sound pressure level', 'dB SPL', DB, ['94 dB SPL']),
  hearingLevel: level('a hearing level', 'dB HL', DB, ['20 dB HL']),
  weightedLevel: level('an A-weighted level', 'dB(A)', { ...DB, dBA: { power: 0 } }, ['30 dB(A)']),
  lineLoss: level(
    'a loss of line',
    'dB/m',
    { 'dB/100m': { power: -2 }, 'dB/km': { power: -3 }, 'dB/ft': factor(1 / 0.3048), 'dB/100ft': factor(0.01 / 0.3048) },
    ['0.1 dB/m', '12 dB/100 m'],
  ),
} as const satisfies Readonly<Record<string, Dimension>>;

export type DimensionName = keyof typeof DIMENSIONS;

/** Gain of a half-wave dipole over isotropic [dB]. Source: ITU-R BS.561, which rounds 10 log10(1.64) so. */
const DIPOLE_GAIN = 2.15;

function celsius(x: number): number {
  return x + 273.15;
}

function fahrenheit(x: number): number {
  return ((x - 32) * 5) / 9 + 273.15;
}
