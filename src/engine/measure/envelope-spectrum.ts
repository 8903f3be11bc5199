import { evaluate, type Reception } from '../chain/index.ts';
import { GivenError } from '../given-error.ts';
import { halfWidthOf, listeningWindow, openResponse, receiverCircuit } from '../listen/index.ts';
import { C, fourierTransform } from '../numeric/index.ts';
import { type EnvelopeSource, modulator, type ProgrammeModulation } from '../programme/index.ts';
import { speechProgramme } from './test-signals.ts';

/** Radio spectrum about the dial, from the envelopes of the stations. */
export interface EnvelopeSpectrum {
  /** middles of the bins [Hz], evenly spaced */
  readonly frequency: Float64Array;
  readonly binWidth: number;
  /** mean square e.m.f. at the aerial by bin, all stations [V^2]; their sum is that of the stations' e.m.f. squared */
  readonly aerial: Float64Array;
  /** voltage across the detector for one volt of e.m.f., its conductance at rest in place [dB], as the dial stands */
  readonly response: Float64Array;
  /** stations whose carriers lie within */
  readonly stations: readonly { readonly name: string; readonly frequency: number }[];
}

export interface EnvelopeSpectrumOptions {
  /** the wanted station, in the middle */
  readonly station: number;
  /** of the dial [rad] */
  readonly angle: number;
  /** from the middle to either end [Hz]; as far as stations are followed unless given, for AM ten channels */
  readonly span?: number;
  /** of the speech-shaped programmes; 1 unless given */
  readonly seed?: number;
}

/** Bins of FM and AM [Hz], and the rates of their envelopes, whole multiples of them [Hz]. */
const FM = { bin: 1000, rate: 384_000, seconds: 0.25 } as const;
const AM = { bin: 100, rate: 48_000, seconds: 1 } as const;
const AM_SPAN = 90_000;
/** Programme passed over before the spectrum is taken [s]. */
const LEAD = 0.1;

/**
 * Power of all stations about the wanted one, carrying speech-shaped noise, and what the dial makes of it.
 *
 * Each station's envelope by itself, averaged over stretches under Hann's window (noise bandwidth 1.5 bins), put on the nearest bin of its carrier:
 * programmes do not know of each other, so powers add. Bins are 1 kHz wide where the wanted station is FM, 100 Hz where it is AM.
 *
 * @throws GivenError if the span is no number from ten bins to the listening window
 * Source: as `powerSpectrum`; envelopes by `modulator`; response by the network's natural modes.
 */
export function envelopeSpectrum(reception: Reception, options: EnvelopeSpectrumOptions): EnvelopeSpectrum {
  const { station, angle, seed = 1 } = options;
  const { receiver, signals } = reception;
  const wanted = signals[station];
  if (!wanted)
    throw new GivenError('measure.station', `${station}`, `the place has the stations 0 to ${signals.length - 1}`, 'Give one of them.');
  const { frequency: middle, modulation } = wanted.received.station;
  const { bin } = modulation.kind === 'fm' ? FM : AM;
  const most = listeningWindow(middle);
  const span = options.span ?? (modulation.kind === 'fm' ? most : Math.min(AM_SPAN, most));
  if (!(span >= 10 * bin && span <= most))
    throw new GivenError('measure.span', `${span} Hz`, `stations are followed up to ${most} Hz from the wanted one`, 'Give less.');
  const half = Math.round(span / bin);
  const aerial = new Float64Array(2 * half + 1);
  signals.forEach((signal, k) => {
    const { station: s } = signal.received;
    const offset = s.frequency - middle;
    if (Math.abs(offset) > span + halfWidthOf(s.modulation)) return;
    const power = envelopePower(s.modulation, receiver.listener.programme.level, seed + k, bin);
    const reach = power.length >> 1;
    const carrier = half + Math.round(offset / bin);
    power.forEach((p, n) => {
      const at = carrier + n - reach;
      if (at >= 0 && at < aerial.length) aerial[at] = aerial[at]! + p * signal.emf ** 2;
    });
  });
  const frequency = aerial.map((_, n) => middle + (n - half) * bin);
  const radio = receiverCircuit(receiver, wanted.arrival).radio(angle, middle);
  const conductance = evaluate(reception, station, angle, false).rest.radioConductance;
  return {
    frequency,
    binWidth: bin,
    aerial,
    response: frequency.map((f) => {
      const { voltage, impedance } = openResponse(radio, f);
      return 20 * Math.log10(C.abs(voltage) / C.abs(C.add(C.ONE, C.scale(impedance, conductance))));
    }),
    stations: signals.flatMap(({ received: { station: s } }) =>
      Math.abs(s.frequency - middle) <= span ? [{ name: s.name, frequency: s.frequency }] : [],
    ),
  };
}

/** Power of a station's envelope by bins of a width [Hz], carrier in the middle, unit amplitude at rest. */
function envelopePower(modulation: ProgrammeModulation, level: number, seed: number, bin: number): Float64Array {
  const { rate, seconds } = modulation.kind === 'fm' ? FM : AM;
  const programme = speechProgramme(modulation, level, LEAD + seconds, seed).sent();
  const source = modulator(programme.audio, modulation, rate, { drive: programme.drive });
  const lead = Math.round(LEAD * rate);
  source.next(new Float64Array(lead), new Float64Array(lead));
  return complexPower(source, Math.round(seconds * rate), rate / bin);
}

/** Mean square by bin of a complex signal, from the lowest to the highest frequency; an odd number of bins, 0 Hz in the middle. */
function complexPower(source: EnvelopeSource, count: number, size: number): Float64Array {
  const re = new Float64Array(count);
  const im = new Float64Array(count);
  source.next(re, im);
  const transform = fourierTransform(size);
  const half = (size - 1) >> 1;
  const power = new Float64Array(2 * half + 1);
  const [a, b] = [new Float64Array(size), new Float64Array(size)];
  let stretches = 0;
  for (let start = 0; start + size <= count; start += size >> 1, stretches++) {
    for (let n = 0; n < size; n++) {
      const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * n) / size);
      a[n] = window * re[start + n]!;
      b[n] = window * im[start + n]!;
    }
    transform.forward(a, b);
    for (let k = -half; k <= half; k++) {
      const at = (k + size) % size;
      power[k + half] = power[k + half]! + a[at]! ** 2 + b[at]! ** 2;
    }
  }
  // the power of Hann's window is 3/8
  return power.map((p) => p / (stretches * size * size * (3 / 8)));
}
