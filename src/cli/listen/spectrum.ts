import { drawSpectrum } from '#draw';
import { BANDS, leakLoss, powerRatio, powerSpectrum, REFERENCE_SOUND_PRESSURE, SOUND_BANDS, SOUND_RATE, thirdOctavePowers } from '#engine';
import { formatFigure } from '#units';
import { writeText } from '../write-text.ts';
import type { Prepared } from './prepare.ts';

/** Samples in a stretch of the spectrum: 85 ms. */
const STRETCH = 4096;

/**
 * Writes the spectrum of the set's own sound over what hides it, all at the ear.
 *
 * @param sound - [Pa]
 */
export function writeSpectrum(path: string, name: string, prepared: Prepared, sound: Float64Array): void {
  const { reception, station, programme, dialled, ear } = prepared;
  const { audio, phones } = reception.receiver;
  if (sound.length < STRETCH) return;
  const levels = thirdOctavePowers(powerSpectrum(sound, SOUND_RATE, STRETCH)).map((p) => powerRatio(p, REFERENCE_SOUND_PRESSURE ** 2));
  const threshold = audio.threshold.map((t, b) => t - leakLoss(phones.coupling, BANDS[b]!));
  const room = ear.roomLevels;
  const svg = drawSpectrum(
    {
      bands: BANDS,
      sounds: [{ label: 'sound of the set', levels }],
      threshold,
      ...(room ? { room: BANDS.map((f) => room[SOUND_BANDS.indexOf(f)]!) } : {}),
    },
    {
      title: `${station.name} at the ear: ${name}`,
      note: `${programme.words}; ${dialled.turn ? 'while the dial turned' : `dial at ${formatFigure(dialled.angle, 'rad')}`}; ${(sound.length / SOUND_RATE).toFixed(1)} s, third octaves.`,
    },
  );
  writeText(path, svg);
}
