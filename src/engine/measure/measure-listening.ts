import type { Reception } from '../chain/index.ts';
import { SOUND_RATE } from '../listen/index.ts';
import { amplitudeRatio } from '../numeric/index.ts';
import { toneSwing } from '../programme/index.ts';
import { coherentSplit, partOf } from './coherence.ts';
import { differenceFrequency } from './difference-frequency.ts';
import { toneWithHarmonics } from './harmonics.ts';
import { type Leakage, leakage } from './leakage.ts';
import { measureFigures } from './measure-figures.ts';
import { AUDIO_BAND, type ListeningMeasures, type ToneMeasured } from './model.ts';
import { type Sent, silence } from './playing.ts';
import { bandPower, powerSpectrum } from './power-spectrum.ts';
import { responseOf } from './response.ts';
import { sinad } from './sinad.ts';
import { speechHeard } from './speech-heard.ts';
import { pilotVoltage, type StereoResidue, subcarrierOverPilot } from './stereo-residue.ts';
import { LONG, type MeasureOptions, type MeasureProgress, type Measuring, SHORT, TestBench } from './test-bench.ts';
import { programmeShare, responseTones, sentTones } from './test-signals.ts';

/** Equally strong, 400 Hz apart [Hz]: what they make lies in the band of speech. IEC 60268-3 prefers 80 Hz, which an earpiece hardly passes. */
const TWO_TONES = { lower: 1800, upper: 2200 } as const;
/** Samples in a stretch of a spectrum: 85 ms, bins of 11.7 Hz. */
const STRETCH = 4096;

/**
 * Measures what comes out of the earpiece, test by test, by playing the set with test programmes.
 *
 * A generator: whoever runs it sees after each tenth of a second of sound how far it is, and stops it by not going on; `measured` runs it to its end.
 * The same options give the same numbers.
 *
 * @throws GivenError if the wanted station is none of the reception's, or a length, a seed or the angle cannot be
 */
export function* measureListening(reception: Reception, options: MeasureOptions): Generator<MeasureProgress, ListeningMeasures> {
  const bench = new TestBench(reception, options);
  const { station, angle, modulation } = bench;
  const { phones, audio, listener } = reception.receiver;
  const sensitivity = (f: number): number => phones.sensitivity(f);

  const rated = yield* tone(bench, 'tone at rated swing', 1);
  const programme = yield* tone(bench, 'tone with the power of programme', programmeShare(modulation, listener.programme.level));

  const { lower, upper } = TWO_TONES;
  const pair = [lower, upper].map((frequency) => ({ frequency, share: 0.5 }));
  const two = yield* bench.alone('two tones', sentTones(pair, modulation), SHORT);

  const tones = responseTones(modulation, listener.programme.level);
  const many = yield* bench.alone('many tones', sentTones(tones, modulation), LONG);

  const stereo = bench.stereo ? yield* stereoResidue(bench, rated.rms[1]!) : null;

  const beside = yield* bench.together(
    'tone beside noise and neighbours',
    (k) => (k === station ? ratedTone(bench) : bench.speech(k).sent()),
    LONG,
    bench.seed,
  );

  const speech = bench.speech(station);
  const own = yield* bench.alone('speech of the station alone', speech.sent(), bench.speechSeconds);
  const conductance = own.listening.set.bias.outputConductances[0]!;
  const shape = bench.speechShape(station, conductance);
  const ownSplit = coherentSplit(own.sound, shape, SOUND_RATE, STRETCH);
  const all = yield* bench.together('speech beside noise and neighbours', (k) => bench.speech(k).sent(), bench.speechSeconds, bench.seed);
  const allSplit = coherentSplit(all.sound, shape, SOUND_RATE, STRETCH);

  const neighbours = all.listening.heard.filter((a) => a.station !== station);
  let leaked: Leakage | null = null;
  if (neighbours.length > 0) {
    const sent = (k: number): Sent => (k === station ? silence() : bench.speech(k).sent());
    const { sound } = yield* bench.together('neighbours', sent, bench.speechSeconds);
    const programmes = neighbours.map((a) => ({ name: a.name, shape: bench.speechShape(a.station, conductance) }));
    leaked = leakage(sound, SOUND_RATE, programmes, partOf(ownSplit, 'coherent'), sensitivity, STRETCH);
  }

  const measures: ListeningMeasures = {
    station: reception.signals[station]!.received.station.name,
    angle,
    rated,
    programme,
    sinad: sinad(beside.sound, SOUND_RATE, audio.tone, AUDIO_BAND.low, AUDIO_BAND.high),
    intermodulation: differenceFrequency(two.sound, SOUND_RATE, lower, upper),
    response: responseOf(many.sound, SOUND_RATE, tones, sensitivity),
    leakage: leaked,
    stereo,
    speech: speechHeard(reception, station, speech, powerSpectrum(bench.speechAudio(station), SOUND_RATE, STRETCH), ownSplit, allSplit),
    listening: all.listening,
    figures: () => measureFigures(measures),
  };
  return measures;
}

/** The whole procedure at once. */
export function measured(reception: Reception, options: MeasureOptions): ListeningMeasures {
  const steps = measureListening(reception, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

const ratedTone = ({ reception, modulation }: TestBench): Sent =>
  sentTones([{ frequency: reception.receiver.audio.tone, share: 1 }], modulation);

function* tone(bench: TestBench, doing: Measuring, share: number): Generator<MeasureProgress, ToneMeasured> {
  const { modulation, reception } = bench;
  const { audio, phones } = reception.receiver;
  const { sound } = yield* bench.alone(doing, sentTones([{ frequency: audio.tone, share }], modulation), SHORT);
  const found = toneWithHarmonics(sound, SOUND_RATE, audio.tone, AUDIO_BAND.high);
  const level = amplitudeRatio(found.rms[1]!, 1);
  return { ...found, level, soundLevel: level + phones.sensitivity(audio.tone), swing: share * toneSwing(modulation) };
}

function* stereoResidue(bench: TestBench, rated: number): Generator<MeasureProgress, StereoResidue> {
  const { modulation, reception } = bench;
  const { audio, phones } = reception.receiver;
  const opposite = sentTones([{ frequency: audio.tone, share: 1 }], modulation, 'opposite');
  const difference = yield* bench.alone('stereo', opposite, SHORT);
  const bare = yield* bench.alone('stereo', silence(), SHORT);
  const pilot = amplitudeRatio(pilotVoltage(bare.sound, SOUND_RATE), rated);
  const audible = bandPower(powerSpectrum(difference.sound, SOUND_RATE, STRETCH), AUDIO_BAND.low, AUDIO_BAND.high);
  return {
    pilot,
    subcarrier: pilot + subcarrierOverPilot(phones, bare.listening.set.bias.outputConductances[0]!),
    difference: amplitudeRatio(Math.sqrt(audible), rated),
  };
}
