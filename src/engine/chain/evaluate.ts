import { BANDS, type Hearing, hear, type SoundAtEar } from '../ear/index.ts';
import { amplitudeRatio, C, FLOOR, powerRatio } from '../numeric/index.ts';
import { programmeSwing, speechBandSwing, toneSwing } from '../programme/index.ts';
import { type Balance, harmonicBalance } from './harmonic-balance.ts';
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
  /** signal, noise and distortion over noise and distortion, of the rated tone at the earpiece [dB] */
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
    this.carrier = modulated(rf, station.frequency, signal.emf, station.modulation);
    this.point = new OperatingPoint(receiver.detector.law);
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
  const voltage = new Float64Array(BANDS.length);
  const transfer = new Float64Array(BANDS.length);
  let programme2 = 0;
  audio.bands.forEach((p, b) => {
    const divider = C.add({ re: 1, im: 0 }, C.scale(p.load, rest.outputConductance));
    transfer[b] = C.abs(p.transfer) / C.abs(divider);
    voltage[b] = Math.abs(rest.sensitivity) * bandSwing[b]! * tuned.carrier.sideband(p.frequency) * transfer[b]!;
    programme2 += voltage[b]! ** 2;
  });

  const around = withNeighbours
    ? leaks(reception, index, angle, rest, tuned.point, tuned.carrier.relativeSlope() * swing, (k) =>
        programmeSwing(signals[k]!.received.station.modulation, listener.programme.level),
      )
    : [];
  tuned.point.solve(tuned.carrier.amplitude, tuned.carrier.zRe, tuned.carrier.zIm, rest.output, rest.amplitude);
  const resistance = signal.impedance?.(station.frequency).re ?? 0;
  const noise = bandNoise(audio, rest, {
    radiationResistance: Math.max(0, resistance - signal.lossResistance),
    lossResistance: signal.lossResistance,
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
  let noise2 = 0;
  BANDS.forEach((f, b) => {
    const s = audio.bands[b]!.sensitivity;
    programme[b] = level(voltage[b]!, s);
    disturbance[b] = level(
      Math.sqrt((distortion2 + neighbour2) * voltage[b]! ** 2 + whistle2(around, f, rest, transfer[b]!, tuned) + noise[b]! ** 2),
      s,
    );
    noise2 += noise[b]! ** 2;
  });
  const sound: SoundAtEar = { programme, disturbance, attenuation: audio.attenuation, threshold: audio.threshold, ears: phones.ears };
  const hearing = hear(listener.ear, sound);
  const signal2 = rated.earpiece[1]! ** 2;
  const unwanted2 = harmonics2(rated) + noise2 + neighbour2 * programme2;
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

/** Audible beats of neighbouring carriers that fall in the band about f, as earpiece voltage squared [V^2]. */
function whistle2(around: readonly Leak[], f: number, rest: RestPoint, transfer: number, tuned: Tuned): number {
  let sum = 0;
  for (const l of around) {
    if (l.whistle === null || Math.abs(Math.log2(l.whistle / f)) > 1 / 6) continue;
    const amplitude = rest.amplitude * Math.min(1, 10 ** (l.radio / 20));
    sum += (tuned.point.byDrive * (rest.drive / (rest.amplitude || 1)) * amplitude * transfer) ** 2 / 2;
  }
  return sum;
}

function harmonics2(t: ToneLevels): number {
  let sum = 0;
  for (let k = 2; k < t.earpiece.length; k++) sum += t.earpiece[k]! ** 2;
  return sum;
}

function level(volts: number, sensitivity: number): number {
  return Math.max(FLOOR, sensitivity + amplitudeRatio(volts, 1));
}
