import type { Receiver, Reception, Signal } from '../chain/index.ts';
import { BOLTZMANN, NOISE_REFERENCE_TEMPERATURE } from '../constants.ts';
import { GivenError } from '../given-error.ts';
import { amplitudeRatio, C } from '../numeric/index.ts';
import type { EnvelopeSource } from '../programme/index.ts';
import type { RadioCircuit } from './circuit.ts';
import { DetectorSolver } from './detector-solver.ts';
import { foldingBound } from './folding.ts';
import { openResponse } from './open-response.ts';
import { AUDIO_STEP, envelopeRate, halfWidthOf, listeningWindow, spectrumHalfWidth } from './rate-plan.ts';
import { receiverCircuit } from './receiver-circuit.ts';
import { SetInTime } from './set-in-time.ts';

/** Beats that fold back are kept this far below the mean current [dB] by a higher rate than the least, but never one above the second [Hz], for speed. */
const FOLDED = -40;
const MOST_RATE = 3_072_000;
const RATES = [1, 1.5, 2, 3, 4];

/** A station's programme at the engine's rate. */
export interface Broadcast {
  readonly source: EnvelopeSource;
  /** true where the source is about the reference frequency, false where it is about its own carrier */
  readonly turned: boolean;
}

export interface ListeningOptions {
  /** the wanted station among the reception's */
  readonly station: number;
  /** of the dial [rad] */
  readonly angle: number;
  /** makes the programme of a station; `offset`: its carrier from the reference [Hz] */
  readonly broadcast: (station: number, rate: number, offset: number) => Broadcast;
  /** rate of the envelopes [Hz], a multiple of 96 kHz; chosen unless given */
  readonly rate?: number;
  /** seed of the noise; none unless given */
  readonly noise?: number;
}

/** A station as it arrives at the detector. */
export interface Arriving {
  readonly station: number;
  readonly name: string;
  /** carrier from the reference [Hz] */
  readonly offset: number;
  /** open voltage at the detector by the wanted station's [dB] */
  readonly level: number;
}

/** A receiver set going at a place. */
export interface Listening {
  readonly set: SetInTime;
  /** frequency about which the envelopes are: the wanted carrier [Hz] */
  readonly reference: number;
  /** [Hz] */
  readonly rate: number;
  /** all spectrum lies so near the reference [Hz] */
  readonly halfWidth: number;
  readonly heard: readonly Arriving[];
  /** stations too far from the reference to be followed: what they would add is their level */
  readonly leftOut: readonly Arriving[];
  /** bound on beats of the two strongest stations that fold back on the audio band, by the mean current [dB]; null for a single station */
  readonly folding: number | null;
}

/**
 * Sets a receiver going in time, with all stations of the place within the window about the wanted one.
 *
 * @throws GivenError if the wanted station is none of the reception's, or a source comes at another rate
 */
export function listen(reception: Reception, options: ListeningOptions): Listening {
  const { receiver, signals } = reception;
  const wanted = signals[options.station];
  if (!wanted)
    throw new GivenError(
      'listen.station',
      `${options.station}`,
      `the place has ${signals.length} stations`,
      'Name one of them by its place.',
    );
  const reference = wanted.received.station.frequency;
  const circuit = receiverCircuit(receiver, wanted.arrival);
  const radio = circuit.radio(options.angle, reference);
  const ours = C.abs(openResponse(radio, reference).voltage) * wanted.emf;
  const window = listeningWindow(reference);
  const arriving = signals.map((signal, station): Arriving & { readonly signal: Signal } => {
    const { name, frequency } = signal.received.station;
    const theirs = C.abs(openResponse(radio, frequency).voltage) * signal.emf;
    return { signal, station, name, offset: frequency - reference, level: amplitudeRatio(theirs, ours) };
  });
  const inside = arriving.filter((a) => Math.abs(a.offset) <= window);
  const occupied = inside.map(({ signal, offset }) => {
    const { modulation } = signal.received.station;
    return { offset, halfWidth: halfWidthOf(modulation), kind: modulation.kind };
  });
  const halfWidth = spectrumHalfWidth(occupied);
  const folded = (rate: number): number | null => folding(inside, radio, receiver, halfWidth, rate);
  const least = envelopeRate(occupied);
  const rates = RATES.map((r) => AUDIO_STEP * Math.ceil((r * least) / AUDIO_STEP)).filter((r) => r === least || r <= MOST_RATE);
  const rate = options.rate ?? rates.find((r) => (folded(r) ?? FOLDED) <= FOLDED) ?? rates.at(-1)!;
  const stations = inside.map(({ signal, station, name, offset }, k) => ({
    name,
    frequency: reference + offset,
    emf: signal.emf,
    halfWidth: occupied[k]!.halfWidth,
    ...options.broadcast(station, rate, offset),
  }));
  const noise =
    options.noise === undefined
      ? undefined
      : { emf: noiseDensity(reception, wanted, radio), temperature: receiver.set.detector.temperature, seed: options.noise };
  const set = new SetInTime(circuit, stations, { reference, rate, angle: options.angle, ...(noise ? { noise } : {}) });
  const plain = ({ station, name, offset, level }: Arriving): Arriving => ({ station, name, offset, level });
  return {
    set,
    reference,
    rate,
    halfWidth,
    heard: inside.map(plain),
    leftOut: arriving.filter((a) => !inside.includes(a)).map(plain),
    folding: folded(rate),
  };
}

/** The two strongest at the detector, with the output voltage that the stronger makes by itself. */
function folding(
  inside: readonly (Arriving & { readonly signal: Signal })[],
  radio: RadioCircuit,
  receiver: Receiver,
  halfWidth: number,
  rate: number,
): number | null {
  const [first, second] = [...inside].sort((a, b) => b.level - a.level);
  if (!first || !second) return null;
  const open = ({ signal }: { readonly signal: Signal }) => {
    const r = openResponse(radio, signal.received.station.frequency);
    return { voltage: C.scale(r.voltage, Math.SQRT2 * signal.emf), impedance: r.impedance };
  };
  const stronger = open(first);
  const alone = new DetectorSolver(receiver.detector.law);
  alone.between(stronger.impedance.re, stronger.impedance.im, 0, receiver.audio.harmonics[0]!.load.re);
  alone.solve(C.abs(stronger.voltage), 0);
  const bound = foldingBound(
    receiver.detector.law,
    [stronger.voltage, open(second).voltage],
    stronger.impedance,
    alone.output,
    halfWidth,
    rate,
  );
  return amplitudeRatio(bound, 1);
}

/**
 * Noise of the e.m.f. that stands for all noise of the radio half [V^2/Hz].
 *
 * Seen from the detector the port has the noise of its resistance R at the set's temperature, but for what the radiation resistance receives:
 * 4 k (T R + (T0 F - T) R_r |H|^2) with the response H from e.m.f. to port (Nyquist); carried back to the e.m.f. by |H|^2.
 */
function noiseDensity({ receiver }: Reception, signal: Signal, radio: RadioCircuit): number {
  const { station, noiseFigure } = signal.received;
  const temperature = receiver.set.detector.temperature;
  const sky = NOISE_REFERENCE_TEMPERATURE * 10 ** (noiseFigure / 10);
  const { voltage, impedance } = openResponse(radio, station.frequency);
  return 4 * BOLTZMANN * Math.max(0, (temperature * impedance.re) / C.abs2(voltage) + (sky - temperature) * signal.radiationResistance);
}
