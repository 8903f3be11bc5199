import { GivenError } from '../given-error.ts';
import { lowPassKernel, Resampler, type SampleSource } from '../numeric/index.ts';
import { audioStepping } from './audio-stepping.ts';
import type { CircuitInTime } from './circuit.ts';
import { ComplexNoise } from './complex-noise.ts';
import type { DetectorLoop } from './detector-loop.ts';
import { EarpieceNoise } from './earpiece-noise.ts';
import { EmfFeed } from './emf-feed.ts';
import { lookAhead } from './emf-filter.ts';
import { OneDetectorLoop } from './one-detector-loop.ts';
import { onePortFits } from './one-port-fit.ts';
import { between, inOrderOf } from './passing-tuning.ts';
import type { RadioTuning, TuningAccuracy } from './radio-tuning.ts';
import { AUDIO_STEP, tapsFor } from './rate-plan.ts';
import type { RestBias } from './rest-bias.ts';
import { SeveralDetectorsLoop } from './several-detectors-loop.ts';
import { BLOCK, type StationInTime, StationSum } from './station-sum.ts';
import { type TunedSet, Tuner } from './tuned-set.ts';

/** Samples of the earpiece's voltage a second. */
export const SOUND_RATE = 48_000;
/** Audio passed whole [Hz]; what would fold back on it is cut, in the step to 96 kHz and in that to 48 kHz, by this [dB]. */
const PASSED = 20_000;
const ATTENUATION = 100;
/** Bare carriers before the programme begins, thrown away while the filters fill [s]; a whole number of samples at every rate. */
const PRIMING = 2e-3;
/** The noise of the earpiece has a seed apart from that of the aerial, and from those of what is heard beside the set. */
const EARPIECE_SEED = 0x7068_6f6e;
const SEEDS = 2 ** 32;
/** A turning dial is worked out anew this often [s]; between, all numbers pass straight over, in pieces of so many samples. */
const TURN_STEP = 4e-3;
const PIECE = 16;
/** Time a dial takes to a new angle unless told otherwise [s]. */
const TURN = 0.02;

/** Noise that comes in by the aerial and that of the set's own resistances. */
export interface NoiseInTime {
  /** of the e.m.f. [V^2/Hz, one-sided] */
  readonly emf: number;
  /** of the audio side and the detectors [K] */
  readonly temperature: number;
  /** whole number: the same seed gives the same noise */
  readonly seed: number;
}

export interface TimeOptions {
  /** about which the envelopes are [Hz] */
  readonly reference: number;
  /** of the envelopes [Hz], a multiple of 96 kHz; see `envelopeRate` */
  readonly rate: number;
  /** of the dial [rad] */
  readonly angle: number;
  readonly noise?: NoiseInTime;
}

/** How well the set is followed, and whether every instant was solved. */
export interface TimeReport {
  readonly rate: number;
  readonly accuracy: TuningAccuracy;
  /** instants without a solution: zero for any law a passive part can have */
  readonly failures: number;
  /** instants at which Newton's method gave way to the brackets */
  readonly fallbacks: number;
}

/**
 * A set in time: stations' envelopes in, the earpiece's voltage out.
 *
 * Radio half: the natural modes of the circuit about the reference, each stepped exactly; its detectors' conductance at rest is part of it, and what
 * they draw beyond that runs straight between samples. Audio half: likewise, down to 0 Hz. At each sample the detectors' equations are solved. The set
 * begins at rest, carriers on and bias settled; sample k of the sound belongs to the time k/48 kHz of the programmes. Blocks are cut inside, so that the block asked for never changes the result.
 *
 * Turning the dial, the circuit is worked out anew every 4 ms and its numbers pass straight from one to the next, while all states carry on: the
 * capacitor turns, it is not exchanged.
 *
 * Holds for: a detector whose radio voltage is a sinusoid (its harmonics shorted by tank and bypass), and envelopes slow beside the carrier.
 * Source: equations of the complex envelope derived (see modal-circuit.ts, radio-tuning.ts); detector by its describing function, K. K. Clarke, D. T. Hess,
 * Communication Circuits (1971), ch. 4; held against integration with the carrier in tests/reference.
 */
export class SetInTime {
  readonly #tuner: Tuner;
  readonly #loop: DetectorLoop;
  readonly #envelopes: EmfFeed;
  readonly #sound: SampleSource;
  readonly #noise: EarpieceNoise | null;
  readonly #options: TimeOptions;
  readonly #circuit: CircuitInTime;
  readonly #blocksPerStep: number;
  readonly #second = new Float64Array(0);
  /** blocks of the loop so far: it runs ahead of the sound by the filters' reach */
  #blocks = 0;
  #now: TunedSet;
  #target: number;
  #anglePerStep = 0;
  /** the turn of the dial under way: from `#now` to here, and how far */
  #passing: { readonly to: TunedSet; readonly tuning: RadioTuning | null; blocks: number } | null = null;

  /** @throws GivenError if the rate is no multiple of 96 kHz, or a source has another */
  constructor(circuit: CircuitInTime, stations: readonly StationInTime[], options: TimeOptions) {
    check(stations, options);
    const { reference, rate, angle, noise } = options;
    this.#circuit = circuit;
    this.#options = options;
    this.#target = angle;
    this.#blocksPerStep = Math.max(1, Math.round((TURN_STEP * rate) / BLOCK));
    const audio = audioStepping(circuit.audio, rate);
    const bands = stations.map((s) => ({ middle: s.frequency - reference, half: s.halfWidth }));
    const taps = tapsFor(stations.length);
    const { impedance } = circuit.radio(angle, reference).source;
    const half = Math.max(AUDIO_STEP, ...bands.map((b) => Math.abs(b.middle) + b.half));
    const fits = impedance === null ? [null] : onePortFits(impedance, reference, half);
    this.#tuner = new Tuner(circuit, fits, { reference, rate, bands, taps }, stations, audio.steady);
    this.#now = this.#tuner.at(angle);
    this.#loop = circuit.laws.length === 1 ? new OneDetectorLoop(circuit.laws[0]!, audio) : new SeveralDetectorsLoop(circuit.laws, audio);
    this.#loop.tune(this.#now.tuning, this.#now.bias);
    const emfNoise = noise ? new ComplexNoise(noise.seed, Math.sqrt(noise.emf * rate)) : null;
    const sum = new StationSum(stations, reference, rate, Math.round(PRIMING * rate) - lookAhead(taps), emfNoise, this.#now.tuning.gains);
    this.#envelopes = new EmfFeed(sum, taps, circuit.laws.length);
    const carriers = sum.before(lookAhead(taps) + 1);
    this.#loop.rest(
      this.#now.bias,
      stations.map((s, k) => ({ angle: (2 * Math.PI * (s.frequency - reference)) / rate, emf: carriers[k]! })),
    );
    this.#noise = noise ? new EarpieceNoise((noise.seed + EARPIECE_SEED) % SEEDS) : null;
    this.#shapeNoise(0);
    const loop: SampleSource = { next: (ear) => this.#run(ear) };
    const halfway = new Resampler(loop, rate, AUDIO_STEP, lowPassKernel(PASSED, AUDIO_STEP - PASSED, ATTENUATION), 1);
    this.#sound =
      rate === AUDIO_STEP
        ? new Resampler(loop, rate, SOUND_RATE, lowPassKernel(PASSED, SOUND_RATE - PASSED, ATTENUATION), 1)
        : new Resampler(halfway, AUDIO_STEP, SOUND_RATE, lowPassKernel(PASSED, SOUND_RATE - PASSED, ATTENUATION), 1);
    this.#sound.next(new Float64Array(Math.round(PRIMING * SOUND_RATE)), this.#second);
  }

  /** Angle of the dial [rad] as it stands or turns. */
  get angle(): number {
    return this.#now.angle;
  }

  /** How the set is followed at the present angle. */
  report(): TimeReport {
    return { rate: this.#options.rate, accuracy: this.#now.tuning.accuracy, ...this.#loop.report };
  }

  /** Bias of the detectors at the present angle, carriers on and no modulation. */
  get bias(): RestBias {
    return this.#now.bias;
  }

  /**
   * Turns the dial from where it is.
   *
   * @param angle - to where [rad]
   * @param seconds - time it takes; 20 ms unless given, as quick as a hand
   */
  setAngle(angle: number, seconds = TURN): void {
    checkAngle(angle);
    this.#target = angle;
    const from = this.#passing?.to.angle ?? this.#now.angle;
    const steps = Math.max(1, Math.ceil((seconds * this.#options.rate) / (BLOCK * this.#blocksPerStep)));
    this.#anglePerStep = (angle - from) / steps;
  }

  /** Fills the array with the samples of the earpiece's voltage [V] that follow, at 48 kHz. */
  process(out: Float64Array): void {
    this.#sound.next(out, this.#second);
    this.#noise?.add(out);
  }

  /** One block of the detectors' loop. */
  #run(ear: Float64Array): void {
    this.#blocks++;
    if (this.#passing === null) this.#startTurning();
    if (this.#passing === null) {
      this.#envelopes.next(this.#now.tuning);
      this.#loop.run(this.#envelopes, 0, BLOCK, ear);
      return;
    }
    const { to, tuning } = this.#passing;
    const done = this.#passing.blocks++;
    this.#envelopes.read((tuning === null ? to.tuning : between(this.#now.tuning, tuning, (done + 1) / this.#blocksPerStep)).gains);
    for (let n = 0; n < BLOCK; n += PIECE) {
      const share = (done + (n + PIECE / 2) / BLOCK) / this.#blocksPerStep;
      // where a mode comes or goes there is nothing to pass over: it hardly counts where it does
      const at = tuning === null ? to.tuning : between(this.#now.tuning, tuning, share);
      this.#loop.tune(at, null);
      this.#envelopes.feed(at, n, PIECE);
      this.#loop.run(this.#envelopes, n, PIECE, ear.subarray(n, n + PIECE));
    }
    if (this.#passing.blocks < this.#blocksPerStep) return;
    this.#now = tuning === null ? to : { ...to, tuning };
    this.#passing = null;
    if (this.#now.angle === this.#target) {
      this.#loop.tune(this.#now.tuning, this.#now.bias);
      this.#shapeNoise(Math.ceil((this.#blocks * BLOCK * SOUND_RATE) / this.#options.rate - PRIMING * SOUND_RATE));
    }
  }

  #startTurning(): void {
    const from = this.#now.angle;
    if (from === this.#target) return;
    const left = this.#target - from;
    const angle = Math.abs(left) <= 1.000001 * Math.abs(this.#anglePerStep) ? this.#target : from + this.#anglePerStep;
    const to = this.#tuner.at(angle);
    this.#passing = { to, tuning: inOrderOf(this.#now.tuning, to.tuning), blocks: 0 };
  }

  /** @param from - sample of the sound from which on it has its present shape */
  #shapeNoise(from: number): void {
    const { noise } = this.#options;
    if (noise) this.#noise?.shape(this.#circuit.audio, this.#now.bias.outputConductances, noise.temperature, SOUND_RATE, from);
  }
}

function check(stations: readonly StationInTime[], { rate, reference, angle }: TimeOptions): void {
  if (!(Number.isInteger(rate / AUDIO_STEP) && rate > 0))
    throw new GivenError(
      'listen.rate',
      `${rate} Hz`,
      `envelopes are followed at whole multiples of ${AUDIO_STEP} Hz`,
      'Take `envelopeRate`.',
    );
  if (!(reference > 0 && reference < Number.POSITIVE_INFINITY))
    throw new GivenError('listen.reference', `${reference} Hz`, 'a reference is a frequency above zero', 'Take the wanted carrier.');
  checkAngle(angle);
  for (const s of stations) {
    if (!(s.emf >= 0 && s.emf < Number.POSITIVE_INFINITY))
      throw new GivenError(`listen.${s.name}`, `${s.emf} V`, 'an e.m.f. is zero or above', 'Leave the station out if it is not received.');
    if (!(Math.abs(s.frequency - reference) < rate / 2))
      throw new GivenError(
        `listen.${s.name}`,
        `${s.frequency} Hz`,
        `at ${rate} Hz nothing is told apart that is ${rate / 2} Hz or more from ${reference} Hz`,
        'Leave the station out or take a higher rate.',
      );
    if (s.source.rate !== rate)
      throw new GivenError(`listen.${s.name}`, `${s.source.rate} Hz`, `the set is followed at ${rate} Hz`, 'Make the source at that rate.');
  }
}

function checkAngle(angle: number): void {
  if (!Number.isFinite(angle)) throw new GivenError('listen.angle', `${angle} rad`, 'an angle of the dial is a number', 'Give one.');
}
