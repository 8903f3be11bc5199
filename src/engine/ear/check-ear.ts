import { BANDS } from '../bands.ts';
import { GivenError } from '../given-error.ts';
import type { EarDescription } from './description.ts';
import type { SoundAtEar } from './model.ts';

/** @throws GivenError if the hearing levels are not finite or their frequencies do not ascend (the room is checked where it is read) */
export function checkHearingLevel(points: EarDescription['hearingLevel']): void {
  points.forEach((p, i) => {
    const path = `ear.hearingLevel[${i}]`;
    if (!(p.level >= -30 && p.level <= 130))
      throw new GivenError(
        `${path}.level`,
        `${p.level} dB HL`,
        'an audiogram runs from -30 to 130 dB HL',
        'Give the level from the audiogram.',
      );
    const before = points[i - 1]?.frequency ?? 0;
    if (!(p.frequency > before && p.frequency < Number.POSITIVE_INFINITY))
      throw new GivenError(
        `${path}.frequency`,
        `${p.frequency} Hz`,
        'frequencies are above zero and ascend',
        'List the points from the lowest frequency to the highest.',
      );
  });
}

/** @throws GivenError if an array does not follow BANDS or holds something that is not a finite number */
export function checkSound(sound: SoundAtEar): void {
  for (const key of ['programme', 'disturbance', 'attenuation', 'threshold'] as const) {
    const levels = sound[key];
    if (levels.length !== BANDS.length)
      throw new GivenError(
        `sound.${key}`,
        `${levels.length} bands`,
        `it must hold the ${BANDS.length} bands from 160 Hz to 8 kHz`,
        'Fill the missing ones with -200 dB.',
      );
    for (let i = 0; i < levels.length; i++)
      if (!Number.isFinite(levels[i]))
        throw new GivenError(`sound.${key}[${i}]`, `${levels[i]} dB`, 'it is not a finite number', 'Use -200 dB for nothing.');
  }
}
