import { fourierTransform, fullToneDrive, type ModulatorOptions, modulator, SPEECH_BANDS, speechNoise, toneAudio } from '#engine';
import { amplitude, multiplexSpectrum, type Spectrum, take } from '../unit/programme-time/ideal-receiver.ts';
import type { Claim, LeftOut } from './claim.ts';

const mono = { kind: 'fm', deviation: 75e3, preEmphasis: 50e-6, stereo: false } as const;
const stereo = { ...mono, stereo: true } as const;
const RATE = 600_000;

/** What is sent of a tone, by an ideal discriminator. */
const sent = (
  frequency: number,
  side: 'both' | 'left',
  modulation: typeof mono | typeof stereo,
  options?: Partial<ModulatorOptions>,
): Spectrum => {
  const all = { drive: fullToneDrive(frequency, modulation), ...options };
  return multiplexSpectrum(take(modulator(toneAudio([{ frequency, amplitude: 0.99 }], side), modulation, RATE, all), 0.8, 0.04));
};

/** Multiplex power that the transmitter's own meter shows after a second [dBr]. */
function metered(station: ReturnType<typeof modulator>): number {
  const [re, im] = [new Float64Array(RATE), new Float64Array(RATE)];
  station.next(re, im);
  return station.meter().multiplexPower!;
}

export const claims: readonly Claim[] = [
  {
    figure: 'pre-emphasis, as sent in time',
    against: 'BS.450 law',
    errorUnit: 'dB',
    file: 'detect-hear',
    ids: /^EMPH-/,
    check: ({ inputs, expected }) =>
      inputs.f_Hz
        .map((f: number, i: number) => ({ f, gain: expected.gain_dB[i] as number }))
        // those that fit the window of 40 ms
        .filter(({ f }: { f: number }) => f % 25 === 0)
        .map(({ f, gain }: { f: number; gain: number }) => {
          const modulation = { ...mono, preEmphasis: inputs.tau_s as number };
          const drive = { drive: { kind: 'fixed', gain: 0.1 } } as const;
          const got = 20 * Math.log10(amplitude(sent(f, 'both', modulation as typeof mono, drive), f) / (0.099 * 75e3));
          // owed within 0.1 dB
          return { what: `${f} Hz`, got, expected: gain, tolerance: { abs: 0.01 } };
        }),
  },
  {
    figure: 'stereo multiplex, as sent in time',
    against: '47 CFR 73.322, BS.450',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^MPX-levels$/,
    check: ({ expected }) => {
      const near = { rel: 1e-3 };
      const [least, most] = [0.08, 0.1].map((pilotShare) => sent(1000, 'left', stereo, { pilotShare })) as [Spectrum, Spectrum];
      return [
        { what: 'least pilot', got: amplitude(least, 19e3), expected: expected.pilot_dev_Hz[0], tolerance: near },
        { what: 'greatest pilot', got: amplitude(most, 19e3), expected: expected.pilot_dev_Hz[1], tolerance: near },
        { what: 'one side, sum', got: amplitude(most, 1000) / 0.99, expected: expected.single_channel_main_dev_Hz, tolerance: near },
        {
          what: 'one side, subcarrier',
          got: (amplitude(most, 37e3) + amplitude(most, 39e3)) / 0.99,
          expected: expected.single_channel_sub_dev_Hz,
          tolerance: near,
        },
        {
          what: 'both sides alike',
          got: amplitude(sent(1000, 'both', stereo), 1000) / 0.99,
          expected: expected.mono_sum_max_dev_Hz_at_10pct_pilot,
          tolerance: near,
        },
      ];
    },
  },
  {
    figure: 'multiplex power, metered in time',
    against: 'BS.412',
    errorUnit: 'dB',
    file: 'detect-hear',
    ids: /^MPX-BS412$/,
    check: ({ expected }) => [
      {
        what: 'full sine',
        got: metered(modulator(toneAudio([{ frequency: 1000, amplitude: 1 }]), mono, RATE, { drive: fullToneDrive(1000, mono) })),
        expected: expected.full_75kHz_sine_dBr,
        tolerance: { abs: 0.01 },
      },
      {
        what: 'pilot alone',
        got: metered(modulator(toneAudio([]), stereo, RATE, { drive: { kind: 'fixed', gain: 1 } })),
        expected: expected.pilot_6750Hz_alone_dBr,
        tolerance: { abs: 0.001 },
      },
    ],
  },
  {
    figure: 'speech noise, third octaves',
    against: 'Byrne et al. 1994',
    errorUnit: 'dB',
    file: 'detect-hear',
    ids: /^LTASS-Byrne$/,
    check: ({ inputs, expected }) => {
      const size = 2 ** 19;
      const [re, im] = [new Float64Array(size), new Float64Array(size)];
      speechNoise(9).next(re, im);
      im.fill(0);
      fourierTransform(size).forward(re, im);
      const powers = SPEECH_BANDS.map((f) => {
        const middle = 10 ** (Math.round(10 * Math.log10(f)) / 10);
        let power = 0;
        for (let k = Math.ceil((middle / 10 ** 0.05 / 48e3) * size); k < ((middle * 10 ** 0.05) / 48e3) * size; k++)
          power += re[k]! ** 2 + im[k]! ** 2;
        return power;
      });
      const total = powers.reduce((s, p) => s + p, 0);
      return inputs.f_Hz.map((f: number, i: number) => ({
        what: `${f} Hz`,
        // brought to the overall level of the table, the sum of its bands
        got: 10 * Math.log10(powers[SPEECH_BANDS.indexOf(f)]! / total) + 70.03,
        expected: expected.dB_SPL[i],
        tolerance: { abs: 0.01 },
      }));
    },
  },
];

export const leftOut: readonly LeftOut[] = [];
