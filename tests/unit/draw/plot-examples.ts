import type { CurveOptions, PatternCut, Series } from '#draw';

const turn = (n: number) => Array.from({ length: n }, (_, i) => (2 * Math.PI * i) / n);

/** A made-up lobe: 8 dBi forward, falling with the angle, 14 dB less behind. Not an aerial: round numbers to read back. */
export function lobe(angle: number): number {
  return 8 - 7 * (1 - Math.cos(angle));
}

const gain = (total: number | null) => ({ total, horizontal: total, vertical: null });

export const FORWARD_NORTH: PatternCut = {
  kind: 'azimuth',
  elevation: 0,
  points: turn(360).map((angle) => ({ angle, gain: gain(lobe(angle)) })),
};

/** Two lobes at 30 degrees from the horizon, over ground; nothing along it. */
export const OVER_GROUND: PatternCut = {
  kind: 'elevation',
  azimuth: 1,
  points: Array.from({ length: 181 }, (_, i) => {
    const angle = (Math.PI * i) / 180;
    const field = Math.abs(Math.sin(3 * angle));
    return { angle, gain: gain(field < 1e-9 ? null : 6 + 20 * Math.log10(field)) };
  }),
};

export const FREE_UPRIGHT: PatternCut = {
  kind: 'elevation',
  azimuth: 0,
  points: turn(72).map((angle) => ({ angle, gain: gain(lobe(angle)) })),
};

export const STATIONS = [
  { label: 'Harbour 91.2', bearing: 0.1 },
  { label: 'Hill, the long name of a programme 98.4', bearing: 1.2 },
  { label: 'Mill 101.7', bearing: 1.3 },
  { label: 'Quarry', bearing: 4 },
  { label: 'Lighthouse', bearing: 4.05 },
  { label: 'Castle', bearing: Math.PI },
];

const frequencies = Array.from({ length: 83 }, (_, i) => 87.5e6 + i * 0.25e6);
/** A series circuit of 30 ohm that is resonant at 98 MHz; the band is a tenth up and down. */
const resistance = (f: number) => 30 + 4 * Math.sin(f / 3e6);
const reactance = (f: number) => 600 * (f / 98e6 - 98e6 / f);

export const IMPEDANCE: { readonly series: readonly Series[]; readonly options: CurveOptions } = {
  series: [
    {
      label: 'resistance',
      points: frequencies.map((x) => ({ x, y: resistance(x) })),
      band: frequencies.map((x) => ({ x, low: 0.9 * resistance(x), high: 1.1 * resistance(x) })),
    },
    { label: 'reactance', points: frequencies.map((x) => ({ x, y: reactance(x) })) },
  ],
  options: {
    title: 'Impedance against frequency',
    note: 'A made-up circuit.',
    x: { label: 'frequency', unit: 'Hz' },
    y: { label: 'impedance', unit: 'ohm' },
    marks: [
      { kind: 'x', x: 91.2e6, label: 'Harbour 91.2' },
      { kind: 'x', x: 98.4e6, label: 'Hill 98.4' },
      { kind: 'x', x: 99e6, label: 'Mill 99.0' },
      { kind: 'x', x: 107.5e6, label: 'Castle community 107.5' },
      { kind: 'y', y: 0, label: 'resonance' },
      { kind: 'point', x: 98e6, y: reactance(98e6), label: 'here' },
    ],
  },
};

const tones = Array.from({ length: 61 }, (_, i) => 20 * 10 ** (i / 20));

export const RESPONSE: { readonly series: readonly Series[]; readonly options: CurveOptions } = {
  series: [
    { label: 'earpiece', points: tones.map((x) => ({ x, y: 1e-3 / Math.hypot(1, x / 3000 - 300 / x) })) },
    {
      label: 'the same with a longer name, and louder by a hair',
      points: tones.map((x) => ({ x, y: 1.01e-3 / Math.hypot(1, x / 3000 - 300 / x) })),
    },
    { label: 'threshold', points: tones.map((x) => ({ x, y: x > 5000 ? null : 1e-5 * (1 + (1000 / x) ** 2) })) },
    { label: 'measured', look: 'dots', points: [100, 300, 1000, 3000].map((x) => ({ x, y: 2e-5 * Math.sqrt(x) })) },
  ],
  options: {
    title: 'Sound pressure against frequency',
    x: { label: 'frequency', unit: 'Hz', scale: 'log' },
    y: { label: 'sound pressure', unit: 'Pa', scale: 'log' },
  },
};
