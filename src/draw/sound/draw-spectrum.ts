import { BANDS, GivenError, type Hearing, type SoundAtEar, thirdOctave } from '#engine';
import { type CurveOptions, drawCurve } from '../plot/draw-curve.ts';
import type { Series } from '../plot/series.ts';

/** Levels by third octaves, in the order of the picture's bands [dB SPL]; drawn as steps from edge to edge. */
export interface BandLevels {
  readonly label: string;
  readonly levels: ArrayLike<number>;
}

/** What is at the ear, over what the ear can hear. */
export interface SpectrumPicture {
  /** third octaves by their nominal middles, ascending [Hz] */
  readonly bands: readonly number[];
  readonly sounds: readonly BandLevels[];
  /** spectra line by line: level of each line [dB SPL] */
  readonly lines?: readonly {
    readonly label: string;
    readonly points: readonly { readonly frequency: number; readonly level: number }[];
  }[];
  /** hearing threshold for tones under the earpiece, by band [dB SPL] */
  readonly threshold?: ArrayLike<number>;
  /** the room's noise at the ear, by band [dB SPL] */
  readonly room?: ArrayLike<number>;
}

export type SpectrumOptions = Pick<CurveOptions, 'title' | 'note' | 'width' | 'height' | 'theme' | 'id'>;

/** What stands this far below the threshold, and what stands for nothing, is not worth paper [dB]. */
const BELOW = 20;
const SILENT = -150;

/**
 * Spectrum of the sound at the ear by third octaves, or line by line, over the hearing threshold and the room's noise, as SVG text.
 *
 * @throws GivenError if levels do not match the bands, or are no numbers
 */
export function drawSpectrum(picture: SpectrumPicture, options: SpectrumOptions): string {
  const { bands, sounds, lines = [], threshold, room } = picture;
  const stepped = [...sounds, ...(room ? [{ label: 'room noise at the ear', levels: room }] : [])];
  for (const { label, levels } of [...stepped, ...(threshold ? [{ label: 'threshold', levels: threshold }] : [])])
    if (levels.length !== bands.length)
      throw new GivenError(`spectrum.${label}`, `${levels.length} levels`, `there are ${bands.length} bands`, 'Give one for each band.');
  const edges = bands.map(thirdOctave);
  const heard = (level: number): number | null => (level > SILENT ? level : null);
  const series: Series[] = [
    ...stepped.map(({ label, levels }) => ({
      label,
      points: edges.flatMap(({ low, high }, k) => [low, high].map((x) => ({ x, y: heard(levels[k]!) }))),
    })),
    ...lines.map(({ label, points }) => ({ label, points: points.map((p) => ({ x: p.frequency, y: heard(p.level) })) })),
    ...(threshold
      ? [{ label: 'hearing threshold, for tones', points: edges.map(({ middle }, k) => ({ x: middle, y: threshold[k]! })) }]
      : []),
  ];
  const ground = threshold ? Math.min(...Array.from(threshold)) - BELOW : null;
  const loudest = series.reduce((most, s) => s.points.reduce((m, p) => Math.max(m, p.y ?? m), most), Number.NEGATIVE_INFINITY);
  return drawCurve(series, {
    ...options,
    x: { label: 'frequency', unit: 'Hz', scale: 'log', ...(edges.length > 0 ? { from: edges[0]!.low, to: edges.at(-1)!.high } : {}) },
    // silence and what is far below hearing are left below the frame
    y: { label: 'level', unit: 'dB SPL', ...(ground !== null && ground < loudest ? { from: 10 * Math.floor(ground / 10) } : {}) },
  });
}

/** The picture of speech at the ear: programme, all that disturbs it, the room, the threshold. */
export const speechPicture = (sound: SoundAtEar, { roomNoise }: Pick<Hearing, 'roomNoise'>): SpectrumPicture => ({
  bands: BANDS,
  sounds: [
    { label: 'programme', levels: sound.programme },
    { label: 'distortion, noise and other stations', levels: sound.disturbance },
  ],
  threshold: sound.threshold,
  room: roomNoise,
});
