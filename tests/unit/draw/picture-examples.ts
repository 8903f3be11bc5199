import type { LevelsByBand, ProfilePath, StationAround } from '#draw';
import { BANDS, overBulge } from '#engine';

/** Made-up levels: speech that falls by 6 dB an octave above 500 Hz, a room that falls, a threshold like an ear's. Round numbers to read back. */
const programme = BANDS.map((f) => 52 - 20 * Math.log10(Math.max(1, f / 500)) - (f < 315 ? 18 : 0));
const threshold = BANDS.map((f) => 14 + 24 * Math.abs(Math.log10(f / 2500)));
const roomNoise = BANDS.map((f) => 40 - 22 * Math.log10(f / 160));

export const BAND_LEVELS: LevelsByBand = {
  band: BANDS,
  programme,
  threshold,
  roomNoise,
  disturbance: BANDS.map(() => 12),
  needed: BANDS.map((_, i) => Math.max(threshold[i]!, roomNoise[i]! - 4)),
};
/** A set that is not heard: nothing above its threshold, and a band of silence. */
export const NOT_HEARD: LevelsByBand = { band: BANDS, programme: BANDS.map((_, i) => (i === 3 ? -200 : 5)), threshold };

const steps = Array.from({ length: 61 }, (_, i) => i * 150);
const ridge = (d: number, at: number, high: number, wide: number) => high * Math.exp(-(((d - at) / wide) ** 2));
export const HILL: ProfilePath = {
  profile: overBulge({ distance: steps, height: steps.map((d) => 30 + ridge(d, 5600, 150, 900) + ridge(d, 2300, 60, 500)) }),
  mastHeight: 110,
  siteHeight: 8,
  frequency: 94.6e6,
};
export const OPEN: ProfilePath = {
  profile: { distance: [0, 1000, 4000], height: [10, 12, 10] },
  mastHeight: 100,
  siteHeight: 10,
  frequency: 100e6,
};

export const AROUND: readonly StationAround[] = [
  { label: 'Fen Talk', bearing: 1.92, distance: 2600, field: 0.12 },
  { label: 'Radio Gannet', bearing: 1.31, distance: 9000, field: 0.03 },
  { label: 'Lantern', bearing: 5.32, distance: 1400, field: 0.05 },
  { label: 'Estuary Two, with a name that goes on and on', bearing: 3.49, distance: 24e3, field: 2e-3 },
  { label: 'ラジオ灯台', bearing: 3.49, distance: 24e3, field: 2e-3 },
  { label: 'Night', bearing: 0.02, distance: 12e3, field: 0 },
];
