import type { Reception } from '../chain/index.ts';
import { type Hearing, hear, type SoundAtEar } from '../ear/index.ts';
import { FLOOR, powerRatio } from '../numeric/index.ts';
import { speechBandSwing } from '../programme/index.ts';
import { type CoherentSplit, coherentDoubt, partOf } from './coherence.ts';
import { bandPower, type PowerSpectrum } from './power-spectrum.ts';
import { type SpeechProgramme, swingOfAudio } from './test-signals.ts';
import { SPEECH_THIRDS } from './third-octaves.ts';
import { weighted } from './weighting.ts';

/** Speech-shaped programme as it comes out of the earpiece, by BANDS, and what the ear makes of it. */
export interface SpeechHeard {
  /** earpiece voltage of the programme over the long run, and of everything else [V rms] */
  readonly voltage: Float64Array;
  readonly disturbanceVoltage: Float64Array;
  readonly sound: SoundAtEar;
  readonly hearing: Hearing;
  /** bands in which the programme was found beneath the rest; in others its level is that of the station alone */
  readonly found: readonly boolean[];
  /** earpiece voltages in the bands of speech together, over the programme [dB]: all that is not programme; distortion of the station alone */
  readonly disturbance: number;
  readonly distortion: number;
  /** programme beside noise and neighbours over the programme of the station alone [dB]; null where it was found in no band */
  readonly hush: number | null;
}

/** A programme counts as found where its coherent power is so many standard deviations above what chance makes. */
const FOUND = 4;

/**
 * Band levels at the ear of a split sound, and intelligibility and loudness of them.
 *
 * Programme: the coherent power of each band over the swing that was sent in it, times the swing that programme has in the long run, so that the chance of a
 * few seconds of noise drops out. Disturbance: the rest of each band as it was. Sound pressure: every bin by the earpiece's sensitivity at its
 * frequency. A programme some 13 dB or more beneath the rest of its band is not found any more; intelligibility counts nothing from 15 dB down.
 *
 * @param speech - the programme, and `sent` the spectrum of its audio over the stretch that is analysed
 * @param alone - the sound of the station alone without noise, split by the programme; `all` - that of all stations and noise
 */
export function speechHeard(
  { receiver, signals }: Reception,
  station: number,
  speech: SpeechProgramme,
  sent: PowerSpectrum,
  alone: CoherentSplit,
  all: CoherentSplit,
): SpeechHeard {
  const { phones, audio, listener } = receiver;
  const { modulation } = signals[station]!.received.station;
  const wanted = speechBandSwing(modulation, listener.programme.level);
  const swings: PowerSpectrum = {
    ...sent,
    power: sent.power.map((p, k) => p * swingOfAudio(speech, modulation, k * sent.binWidth) ** 2),
  };
  const asSound = (s: PowerSpectrum): PowerSpectrum => weighted(s, (f) => phones.sensitivity(f));
  const [own, beside, rest] = [partOf(alone, 'coherent'), partOf(all, 'coherent'), partOf(all, 'rest')];
  const [ownSound, besideSound, restSound] = [asSound(own), asSound(beside), asSound(rest)];
  const bands = SPEECH_THIRDS.map((b, k) => {
    const inBand = (s: PowerSpectrum): number => Math.max(0, bandPower(s, b.low, b.high));
    const sentSwing = inBand(swings);
    const longRun = sentSwing > 0 ? wanted[k]! ** 2 / sentSwing : 0;
    const found = longRun > 0 && inBand(beside) > FOUND * coherentDoubt(all, b.low, b.high);
    return {
      found,
      own: longRun * inBand(own),
      power: longRun * inBand(found ? beside : own),
      sound: longRun * inBand(found ? besideSound : ownSound),
      rest: inBand(rest),
      restSound: inBand(restSound),
      distortion: Math.max(0, bandPower(partOf(alone, 'rest'), b.low, b.high)),
    };
  });
  const by = (value: (band: (typeof bands)[number]) => number): Float64Array => Float64Array.from(bands, value);
  const sum = (value: (band: (typeof bands)[number]) => number): number => bands.reduce((s, b) => s + value(b), 0);
  const sound: SoundAtEar = {
    programme: by((b) => soundLevel(b.sound)),
    disturbance: by((b) => soundLevel(b.restSound)),
    attenuation: audio.attenuation,
    threshold: audio.threshold,
    ears: phones.ears,
  };
  return {
    voltage: by((b) => Math.sqrt(b.power)),
    disturbanceVoltage: by((b) => Math.sqrt(b.rest)),
    sound,
    hearing: hear(listener.ear, sound),
    found: bands.map((b) => b.found),
    disturbance: powerRatio(
      sum((b) => b.rest),
      sum((b) => b.power),
    ),
    distortion: powerRatio(
      sum((b) => b.distortion),
      sum((b) => b.own),
    ),
    hush: bands.some((b) => b.found)
      ? powerRatio(
          sum((b) => (b.found ? b.power : 0)),
          sum((b) => (b.found ? b.own : 0)),
        )
      : null,
  };
}

/** Power over (20 uPa)^2 as a level [dB SPL]. */
const soundLevel = (power: number): number => (power > 0 ? Math.max(FLOOR, 10 * Math.log10(power)) : FLOOR);
