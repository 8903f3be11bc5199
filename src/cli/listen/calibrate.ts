import { CALIBRATION_FREQUENCY, CALIBRATION_LEVEL, ReferenceTone, SOUND_RATE, toSamples } from '#engine';
import { scaleSentence } from '#tell';
import { printJson } from '../figures-json.ts';
import { wrap } from '../table.ts';
import { calibrationNotes } from './notes.ts';
import type { Plan } from './options.ts';
import { writeSound } from './sound-file.ts';

const WIDTH = 96;

/** Writes the tone by which playback is set to its true level. */
export function calibrate(plan: Plan, json: boolean): void {
  const { out, encoding, scale, seconds } = plan;
  const file = writeSound(out, encoding);
  const samples = new Float64Array(Math.round(seconds * SOUND_RATE));
  new ReferenceTone().next(samples);
  toSamples(scale, samples, samples);
  file.write(samples);
  file.finish(calibrationNotes(scale));
  console.error(`written: ${out}`);
  if (json) {
    printJson({
      wav: out,
      frequency: { value: CALIBRATION_FREQUENCY, unit: 'Hz', method: 'as stated' },
      level: { value: CALIBRATION_LEVEL, unit: 'dB SPL', method: 'as stated' },
      fullScale: { value: scale.fullScale, unit: 'dB SPL', method: 'as stated' },
    });
    return;
  }
  const how = `${CALIBRATION_FREQUENCY} Hz at ${CALIBRATION_LEVEL} dB SPL, ${seconds} s. Begin with the volume down. Put the phones on a sound level meter's coupler and turn the volume up until it reads ${CALIBRATION_LEVEL} dB; leave the volume there. Files without make-up gain then have the level that the set would have; add --without hearing, since your own ear has its limit.`;
  console.log([wrap(how, WIDTH), wrap(scaleSentence(scale), WIDTH)].join('\n'));
}
