import { BANDS, type Hearing, hear, type SoundAtEar } from '../ear/index.ts';
import { amplitudeRatio, C, FLOOR, powerRatio } from '../numeric/index.ts';
import { programmeSwing, speechBandSwing, toneSwing } from '../programme/index.ts';
import { type Balance, harmonicBalance, outputAtRest } from './harmonic-balance.ts';
import { leaks } from './leaks.ts';
import type { Leak, RestPoint, ToneLevels } from './levels.ts';
import { type Modulated, modulated } from './modulated.ts';
import { bandNoise } from './noise.ts';
import { OperatingPoint } from './operating-point.ts';
import { HARMONICS, type Receiver, type Reception } from './receiver.ts';
import { radioHalf } from './rf-half.ts';

/** Everything about one station through one set at one dial angle. */
export interface Evaluation {
  readonly angle: number;
  readonly rest: RestPoint;
  /** the test tone at rated deviation or depth */
  readonly rated: ToneLevels;
  /** the test tone with the power of programme */
  readonly average: ToneLevels;
  /** signal, noise and distortion over noise and distortion, of the rated tone at the earpiece, neighbours and their whistles counted as noise [dB] */
  readonly sinad: number;
  /** rms earpiece voltage of speech-shaped programme, all bands [V] */
  readonly programmeVoltage: number;
  readonly leaks: readonly Leak[];
  readonly sound: SoundAtEar;
  readonly hearing: Hearing;
  /** what hides the programme, as levels relative to it [dB]: distortion of the slope, other stations, noise of the set */
  readonly distortion: number;
  readonly neighbours: number;
  readonly noise: number;
}

/** A receiver tuned to an angle for one station: the radio side solved, the audio side still to be asked. */
export class Tuned {
  readonly receiver: Receiver;
  readonly carrier: Modulated;
  readonly point: OperatingPoint;
  /** swing of the test tone at full modulation [Hz or 1] */
  readonly ratedSwing: number;

  constructor(reception: Reception, index: number, angle: number) {
    const { receiver, signals } = reception;
    const signal = signals[index]!;
    const { station } = signal.received;
    this.receiver = receiver;
    const rf = radioHalf(receiver, signal, angle, station.frequency);
    const point = new OperatingPoint(receiver.detector.law);
    this.point = point;
    this.carrier = modulated(rf, station.frequency, signal.emf, station.modulation, (drive, zRe, zIm) => {
      outputAtRest(point, [drive, zRe, zIm], receiver.audio.harmonics[0]!.load.re);
      return point.amplitude > 0 ? point.fundamental / point.amplitude : 1 / receiver.detector.zeroBiasResistance;
    });
    this.ratedSwing = toneSwing(station.modulation);
  }

  /** The test tone at a swing [Hz or depth]. */
  tone(swing: number): ToneLevels {
    const { audio, detector } = this.receiver;
    const balance = harmonicBalance(
      detector.law,
      this.carrier.toneDrive(2 * HARMONICS, audio.tone, swing),
      audio.harmonics.map((h) => h.load),
    );
    return toneLevels(balance, this.receiver, swing);
  }

  /** The carrier at rest, with the output voltage that goes with it. */
  rest(output: number): RestPoint {
    const { carrier, point } = this;
    const sensitivity = carrier.sensitivity(point, output);
    point.solve(carrier.amplitude, carrier.zRe, carrier.zIm, output, carrier.amplitude);
    return {
      drive: carrier.amplitude,
      amplitude: point.amplitude,
      current: point.current,
      output,
      radioConductance: point.amplitude > 0 ? point.fundamental / point.amplitude : 1 / this.receiver.detector.zeroBiasResistance,
      outputConductance: -point.conductance,
      power: 0.5 * point.amplitude * point.fundamental,
      sensitivity,
    };
  }
}

/** Levels of one station through the set at one dial angle, with or without the other stations of the place. */
export function evaluate(reception: Reception, index: number, angle: number, withNeighbours = true): Evaluation {
  const { receiver, signals } = reception;
  const signal = signals[index]!;
  const { station } = signal.received;
  const { audio, phones, listener } = receiver;
  const tuned = new Tuned(reception, index, angle);
  const swing = programmeSwing(station.modulation, listener.programme.level);
  const rated = tuned.tone(tuned.ratedSwing);
  const average = tuned.tone(Math.min(Math.SQRT2 * swing, tuned.ratedSwing));
  const rest = tuned.rest(average.meanOutput);

  const bandSwing = speechBandSwing(station.modulation, listener.programme.level);
  const around = withNeighbours
    ? leaks(reception, index, angle, rest, tuned.carrier, (k) =>
        programmeSwing(signals[k]!.received.station.modulation, listener.programme.level),
      )
    : [];
  const hush = around.reduce((product, l) => product * 10 ** (l.hush / 20), 1);
  const voltage = new Float64Array(BANDS.length);
  const transfer = new Float64Array(BANDS.length);
  let programme2 = 0;
  audio.bands.forEach((p, b) => {
    const divider = C.add({ re: 1, im: 0 }, C.scale(p.load, rest.outputConductance));
    transfer[b] = C.abs(p.transfer) / C.abs(divider);
    voltage[b] = hush * Math.abs(rest.sensitivity) * bandSwing[b]! * tuned.carrier.sideband(p.frequency) * transfer[b]!;
    programme2 += voltage[b]! ** 2;
  });

  const noise = bandNoise(audio, rest, {
    portResistance: tuned.carrier.zRe,
    radiationResistance: signal.radiationResistance,
    noiseFigure: signal.received.noiseFigure,
    gain: signal.emf > 0 ? rest.drive / (Math.SQRT2 * signal.emf) : 0,
    byDrive: tuned.point.byDrive,
    temperature: receiver.set.detector.temperature,
  });
  const neighbour2 = around.reduce((sum, l) => sum + 10 ** (l.programme / 10), 0);
  // a noise-like programme of the same power makes twice the second and sqrt(24) times the third harmonic of a tone (moments of a Gaussian)
  const distortion2 = 4 * average.secondHarmonic ** 2 + 24 * average.thirdHarmonic ** 2;
  const programme = new Float64Array(BANDS.length);
  const disturbance = new Float64Array(BANDS.length);
  const whistles = whistles2(around, transfer);
  let noise2 = 0;
  let whistle2 = 0;
  for (let b = 0; b < BANDS.length; b++) {
    const s = audio.bands[b]!.sensitivity;
    programme[b] = level(voltage[b]!, s);
    disturbance[b] = level(Math.sqrt((distortion2 + neighbour2) * voltage[b]! ** 2 + whistles[b]! + noise[b]! ** 2), s);
    noise2 += noise[b]! ** 2;
    whistle2 += whistles[b]!;
  }
  const sound: SoundAtEar = { programme, disturbance, attenuation: audio.attenuation, threshold: audio.threshold, ears: phones.ears };
  const hearing = hear(listener.ear, sound);
  const signal2 = (hush * rated.earpiece[1]!) ** 2;
  const unwanted2 = hush ** 2 * harmonics2(rated) + noise2 + whistle2 + neighbour2 * programme2;
  return {
    angle,
    rest,
    rated,
    average,
    sinad: signal2 > 0 ? powerRatio(signal2 + unwanted2, unwanted2) : 0,
    programmeVoltage: Math.sqrt(programme2),
    leaks: around,
    sound,
    hearing,
    distortion: powerRatio(distortion2, 1),
    neighbours: powerRatio(neighbour2, 1),
    noise: powerRatio(noise2, programme2),
  };
}

function toneLevels(balance: Balance, receiver: Receiver, swing: number): ToneLevels {
  const { audio } = receiver;
  const earpiece = new Float64Array(HARMONICS + 1);
  const levels = new Float64Array(HARMONICS + 1).fill(FLOOR);
  for (let k = 1; k <= HARMONICS; k++) {
    const p = audio.harmonics[k]!;
    earpiece[k] = (C.abs(balance.harmonics[k]!) / C.abs(p.load)) * C.abs(p.transfer) * Math.SQRT1_2;
    levels[k] = level(earpiece[k]!, p.sensitivity);
  }
  const first = audio.harmonics[1]!;
  const current = (C.abs(balance.harmonics[1]!) / C.abs(first.load)) * Math.SQRT1_2;
  const share = (k: number): number => (earpiece[1]! > 0 ? earpiece[k]! / earpiece[1]! : 0);
  return {
    frequency: audio.tone,
    swing,
    converged: balance.converged,
    meanOutput: balance.harmonics[0]!.re,
    earpiece,
    level: levels,
    audioPower: first.power * current ** 2,
    secondHarmonic: share(2),
    thirdHarmonic: share(3),
    balance,
  };
}

/** Audible beats of neighbouring carriers by band, as earpiece voltage squared [V^2]; beats outside the bands of speech are not counted. */
function whistles2(around: readonly Leak[], transfer: Float64Array): Float64Array {
  const out = new Float64Array(BANDS.length);
  for (const { whistle, whistleCurrent } of around) {
    if (whistle === null) continue;
    const apart = BANDS.map((f) => Math.abs(Math.log2(whistle / f)));
    const b = apart.indexOf(Math.min(...apart));
    if (apart[b]! < 1 / 5) out[b] = out[b]! + (whistleCurrent * transfer[b]!) ** 2 / 2;
  }
  return out;
}

function harmonics2(t: ToneLevels): number {
  let sum = 0;
  for (let k = 2; k < t.earpiece.length; k++) sum += t.earpiece[k]! ** 2;
  return sum;
}

function level(volts: number, sensitivity: number): number {
  return Math.max(FLOOR, sensitivity + amplitudeRatio(volts, 1));
}
