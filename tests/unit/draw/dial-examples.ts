import type { DialScale } from '#draw';

const degree = Math.PI / 180;

/**
 * A dial of round numbers to read back, no real tank: a coil of 100 nH under a capacitance that rises evenly with the angle from 22 pF
 * to 34 pF. f = 1 / (2 pi sqrt(L C)).
 */
export const tuned = (angle: number): number => 1 / (2 * Math.PI * Math.sqrt(100e-9 * (22e-12 + (12e-12 * angle) / Math.PI)));
/** The other way round: the angle that gives a frequency. */
export const angleFor = (frequency: number): number => ((1 / ((2 * Math.PI * frequency) ** 2 * 100e-9) - 22e-12) / 12e-12) * Math.PI;

const humps = (frequency: number, apart: number) => [
  { angle: angleFor(frequency) - apart / 2 },
  { angle: angleFor(frequency) + apart / 2 },
];
const points = Array.from({ length: 181 }, (_, i) => ({ angle: i * degree, frequency: tuned(i * degree) }));

export const VHF_DIAL: DialScale = {
  rotation: Math.PI,
  points,
  stations: [
    { label: 'Fen Talk', frequency: 99.2e6, points: humps(99.2e6, 1.6 * degree) },
    { label: 'Radio Gannet', frequency: 94.6e6, points: humps(94.6e6, 2 * degree) },
    { label: 'Estuary Two, with a name that goes on and on', frequency: 95.4e6, points: humps(95.4e6, 1.2 * degree) },
    { label: 'Lantern', frequency: 101.7e6, points: humps(101.7e6, 1.2 * degree).slice(0, 1) },
    { label: 'ラジオ灯台', frequency: 89.1e6, points: humps(89.1e6, 3 * degree) },
    { label: 'Beyond the hill', frequency: 110e6, points: [] },
  ],
};

/** Medium wave on a capacitor of 10 to 365 pF: crowded at the upper end. */
export const MEDIUM_WAVE_DIAL: DialScale = {
  rotation: Math.PI,
  points: points.map(({ angle }) => ({
    angle,
    frequency: 1 / (2 * Math.PI * Math.sqrt(230e-6 * (30e-12 + (355e-12 * angle) / Math.PI))),
  })),
  stations: [
    { label: 'Marsh', frequency: 648e3, points: [{ angle: 123 * degree }] },
    { label: 'Weir', frequency: 1215e3, points: [{ angle: 22 * degree }] },
  ],
};
