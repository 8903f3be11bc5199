import { type Figure, term } from '../figure.ts';
import type { Listening } from './listening.ts';
import { ROOM } from './rate-plan.ts';

/** How a set is followed in time, and how well: what a person may ask of the sound. */
export function listeningFigures({ set, rate, reference, leftOut, folding, halfWidth }: Listening): readonly Figure[] {
  const { accuracy, failures } = set.report();
  const sampling = [
    term('f_s', 'rate of the envelopes', rate, 'Hz'),
    term('W', 'all spectrum lies so near the reference', halfWidth, 'Hz'),
  ];
  const loudest = leftOut.reduce<number | null>((most, s) => (most === null || s.level > most ? s.level : most), null);
  const derived = 'derived';
  return [
    {
      name: 'listen.reference',
      label: 'frequency about which the envelopes are',
      value: reference,
      unit: 'Hz',
      method: 'the wanted carrier',
      working: { formula: 'v(t) = Re(x(t) exp(j 2 pi f0 t))', terms: [term('f0', 'wanted carrier', reference, 'Hz')], source: derived },
    },
    {
      name: 'listen.rate',
      label: 'rate of the envelopes',
      value: rate,
      unit: 'Hz',
      method: 'twice the spectrum with room, raised where beats would fold back',
      working: {
        formula: `f_s >= 2 W + 20 kHz, ${2 * ROOM} W with several stations, at least 480 kHz for FM and 96 kHz for AM`,
        terms: sampling,
        source: derived,
        holds: 'envelopes slow beside the carrier',
      },
    },
    {
      name: 'listen.aerialFit',
      label: "error of the aerial's impedance as fitted over the band",
      value: accuracy.aerialError,
      unit: '1',
      method: accuracy.aerialMethod ?? 'no aerial impedance: the coil is the aerial',
      working: {
        formula: 'max |Z_fit - Z| / max |Z|',
        terms: [term('W', 'half of the band', halfWidth, 'Hz')],
        source: 'Y. Nakatsukasa, O. Sete, L. N. Trefethen, SIAM J. Sci. Comput. 40 (2018) A1494',
      },
    },
    {
      name: 'listen.stillModes',
      label: 'what is left out of modes far from the band, by the response',
      value: accuracy.stillError,
      unit: '1',
      method: 'held at their value at the reference',
      working: {
        formula: 'sum of max |c a/(j w - p) + c a/p| / max |H|',
        terms: [
          term('n', 'modes stepped from sample to sample', accuracy.stepped, '1'),
          term('m', 'modes that stand still', accuracy.still, '1'),
        ],
        source: derived,
      },
    },
    {
      name: 'listen.bandError',
      label: 'greatest error of the open voltage in the band of any station',
      value: accuracy.bandErrors.reduce((most, e) => Math.max(most, e), 0),
      unit: '1',
      method: 'taps by least squares on the stepped modes',
      working: { formula: 'max |H_sampled - H| / max |H|', terms: sampling, source: derived },
    },
    {
      name: 'listen.folding',
      label: 'beats of the two strongest stations that fold back on the audio, by the mean current, at most',
      value: folding,
      unit: 'dB',
      method: 'Fourier series of the mean current in the phase of the beat',
      working: {
        formula: '20 log10(sum of |c_n| over n >= (f_s - 20 kHz)/(2 W) / c_0)',
        terms: sampling,
        source: derived,
        holds: 'two carriers; products of three are left out',
      },
    },
    {
      name: 'listen.leftOut',
      label: 'strongest station beyond the window, at the detector by the wanted one',
      value: loudest,
      unit: 'dB',
      method: 'open voltage at the detector',
      working: {
        formula: '20 log10(|H(f)| E / (|H(f0)| E0))',
        terms: [term('N', 'stations left out', leftOut.length, '1')],
        source: derived,
        holds: 'the louder they are the more they would load the tank and hush the wanted one',
      },
    },
    {
      name: 'listen.failures',
      label: 'instants at which the detector had no solution',
      value: failures,
      unit: '1',
      method: "Newton's method within brackets",
      working: {
        formula: '|f A + z I1(A, V)| = |d|, V = Vh + r i(A, V)',
        terms: [],
        source: derived,
        holds: 'none for a law that a passive part can have',
      },
    },
  ];
}
