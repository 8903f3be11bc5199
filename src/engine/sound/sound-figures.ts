import { type Figure, term } from '../figure.ts';
import { HEARING_CAUTION, playedLevel, quantisationFloor, type SoundScale } from './sound-scale.ts';

/** Bits of whole numbers that hold a sample as finely as floating point of 32 bits holds one at full scale. */
const FLOAT_BITS = 25;

/**
 * What a sample stands for, and how fine it is: what a person may ask of a sound file.
 *
 * @param encoding - of the file
 * @param levelA - of the loudest part of the sound as the set makes it, A-weighted [dB(A)]; null where nothing is heard
 */
export function soundFigures(scale: SoundScale, encoding: '16-bit' | '24-bit' | 'float', levelA: number | null): readonly Figure[] {
  const { fullScale, makeUpGain } = scale;
  const bits = encoding === 'float' ? FLOAT_BITS : Number.parseInt(encoding, 10);
  const gain = term('G', 'make-up gain', makeUpGain, 'dB');
  const full = term('L_fs', 'level of full scale', fullScale, 'dB SPL');
  return [
    {
      name: 'sound.fullScale',
      label: 'level of a sine whose peak is full scale, at the true level',
      value: fullScale - makeUpGain,
      unit: 'dB SPL',
      method: makeUpGain === 0 ? 'as stated' : 'as stated, less the make-up gain',
      working: {
        formula: 'L = L_fs - G; x = p/(p0 sqrt 2 10^(L/20))',
        terms: [full, gain, term('x/p', 'sample for one pascal', scale.samplesPerPascal, '1/Pa')],
        source: 'definition; p0 = 20 uPa',
        holds: 'pressure as the earpiece’s coupler reads it; at the ear, less what its gap loses',
      },
    },
    {
      name: 'sound.makeUpGain',
      label: 'make-up gain: the file is louder than the set by',
      value: makeUpGain,
      unit: 'dB',
      method: 'as stated',
      working: { formula: 'x 10^(G/20)', terms: [gain], source: 'given; never chosen by the sound itself' },
    },
    {
      name: 'sound.floor',
      label: 'noise of the file by its steps, as sound of the set',
      value: quantisationFloor(scale, bits),
      unit: 'dB SPL',
      method: encoding,
      working: {
        formula: 'L_fs - G - (6.02 n + 1.76), from 0 Hz to 24 kHz',
        terms: [full, gain, term('n', 'bits of a sample', bits, '1')],
        source: 'W. R. Bennett, Bell Syst. Tech. J. 27 (1948) 446',
        holds:
          encoding === 'float'
            ? 'for sound near full scale; quieter sound has finer steps'
            : 'sound that moves over several steps; fainter sound is distorted instead',
      },
    },
    {
      name: 'sound.playedLevel',
      label: 'level of the sound played at its calibration',
      value: levelA === null ? null : playedLevel(scale, levelA),
      unit: 'dB(A)',
      method: 'level of the set and make-up gain',
      working: {
        formula: 'L_A + G',
        terms: [term('L_A', 'A-weighted level of the set', levelA, 'dB(A)'), gain, term('L_c', 'caution from', HEARING_CAUTION, 'dB(A)')],
        source: 'definition; Directive 2003/10/EC, Art. 3 (from memory)',
        holds: 'only where playback is set by the reference tone',
      },
    },
  ];
}
