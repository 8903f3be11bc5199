import {
  AUDIO_LIMIT,
  aWeightedLevel,
  carsonBandwidth,
  multiplexDeviations,
  multiplexPower,
  multiplexRmsDeviation,
  PILOT_FREQUENCY,
  PILOT_SHARE_RANGE,
  preEmphasisCorner,
  preEmphasisGain,
  programmeRmsAtLimit,
  SPEECH_BANDS,
  SPEECH_LEVELS,
  STEREO_AUDIO_SHARE,
  SUBCARRIER_FREQUENCY,
  sidebandPowerShare,
} from '#engine';
import type { Claim, LeftOut } from './claim.ts';

const EXACT = { abs: 0 };

export const claims: readonly Claim[] = [
  {
    figure: 'pre-emphasis',
    against: 'BS.450 law',
    errorUnit: 'dB',
    file: 'detect-hear',
    ids: /^EMPH-/,
    check: ({ inputs, expected }) => [
      ...inputs.f_Hz.map((f: number, i: number) => ({
        what: `${f} Hz`,
        got: preEmphasisGain(f, inputs.tau_s),
        expected: expected.gain_dB[i],
        tolerance: { abs: 0.001 },
      })),
      { what: 'corner', got: preEmphasisCorner(inputs.tau_s), expected: expected.corner_Hz, tolerance: { abs: 0.001 } },
    ],
  },
  {
    figure: 'pre-emphasis',
    against: 'BS.450 law',
    errorUnit: 'dB',
    file: 'antennas',
    ids: /^preemphasis-/,
    check: ({ inputs, expected, tolerance }) => [
      {
        what: 'gain',
        got: preEmphasisGain(inputs.frequency_Hz, inputs.time_constant_s),
        expected: expected.gain_dB,
        tolerance: { abs: tolerance.gain_dB },
      },
    ],
  },
  {
    figure: 'stereo multiplex',
    against: '47 CFR 73.322, BS.450',
    errorUnit: 'Hz',
    file: 'detect-hear',
    ids: /^MPX-levels$/,
    check: ({ inputs, expected }) => {
      const least = multiplexDeviations(inputs.max_dev_Hz, PILOT_SHARE_RANGE.low);
      const most = multiplexDeviations(inputs.max_dev_Hz, PILOT_SHARE_RANGE.high);
      return [
        { what: 'least pilot', got: least.pilot, expected: expected.pilot_dev_Hz[0], tolerance: EXACT },
        { what: 'greatest pilot', got: most.pilot, expected: expected.pilot_dev_Hz[1], tolerance: EXACT },
        { what: 'one side, sum', got: most.oneSideSum, expected: expected.single_channel_main_dev_Hz, tolerance: EXACT },
        { what: 'one side, subcarrier', got: most.oneSideDifference, expected: expected.single_channel_sub_dev_Hz, tolerance: EXACT },
        { what: 'both sides alike', got: most.sum, expected: expected.mono_sum_max_dev_Hz_at_10pct_pilot, tolerance: EXACT },
      ];
    },
  },
  {
    figure: 'stereo multiplex',
    against: 'BS.450 levels',
    errorUnit: 'Hz',
    file: 'antennas',
    ids: /^BS450-levels$/,
    check: ({ expected }) => {
      const parts = multiplexDeviations(expected.max_deviation_Hz, expected.pilot_max);
      return [
        { what: 'pilot', got: PILOT_FREQUENCY, expected: expected.pilot_Hz, tolerance: EXACT },
        { what: 'subcarrier', got: SUBCARRIER_FREQUENCY, expected: expected.subcarrier_Hz, tolerance: EXACT },
        { what: 'highest audio', got: AUDIO_LIMIT, expected: expected.audio_max_Hz, tolerance: EXACT },
        { what: 'least pilot share', got: PILOT_SHARE_RANGE.low, expected: expected.pilot_min, tolerance: EXACT },
        { what: 'greatest pilot share', got: PILOT_SHARE_RANGE.high, expected: expected.pilot_max, tolerance: EXACT },
        { what: 'sum', got: STEREO_AUDIO_SHARE, expected: expected.M_max, tolerance: EXACT },
        { what: 'all parts together', got: parts.sum + parts.pilot, expected: expected.max_deviation_Hz, tolerance: { rel: 1e-12 } },
      ];
    },
  },
  {
    figure: 'multiplex power',
    against: 'BS.412',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^MPX-BS412$/,
    check: ({ expected }) => {
      const limit = multiplexRmsDeviation(0);
      const near = { rel: 1e-6 };
      return [
        { what: 'limit, rms', got: limit, expected: expected.rms_dev_Hz, tolerance: near },
        { what: 'limit, mean square', got: limit ** 2, expected: expected.mean_square_Hz2, tolerance: near },
        { what: 'full sine', got: multiplexPower(75e3 / Math.SQRT2), expected: expected.full_75kHz_sine_dBr, tolerance: near },
        { what: 'pilot alone', got: multiplexPower(6750 / Math.SQRT2), expected: expected.pilot_6750Hz_alone_dBr, tolerance: near },
        {
          what: 'programme beside the pilot',
          got: programmeRmsAtLimit(75e3, true),
          expected: expected.programme_rms_at_0dBr_with_9pct_pilot_Hz,
          tolerance: near,
        },
        { what: '+3 dBr', got: multiplexRmsDeviation(3), expected: expected.plus3dBr_rms_Hz, tolerance: near },
      ];
    },
  },
  {
    figure: 'multiplex power',
    against: 'BS.412',
    errorUnit: '%',
    file: 'antennas',
    ids: /^BS412-mpx-power$/,
    check: ({ expected }) => [
      { what: 'peak of the sine', got: multiplexRmsDeviation(0) * Math.SQRT2, expected: expected.deviation_Hz, tolerance: { rel: 1e-12 } },
    ],
  },
  {
    figure: 'bandwidth of FM',
    against: 'Carson',
    errorUnit: 'Hz',
    file: 'detect-hear',
    ids: /^MPX-carson$/,
    check: ({ inputs, expected }) =>
      inputs.fm_Hz.map((f: number, i: number) => ({
        what: `${f} Hz`,
        got: carsonBandwidth(inputs.dF_Hz, f),
        expected: expected.BW_Hz[i],
        tolerance: EXACT,
      })),
  },
  {
    figure: 'AM sideband power',
    against: 'm^2/(2 + m^2), printed 11 % at m = 0.5',
    errorUnit: '%',
    file: 'detect-hear',
    ids: /^AM-sideband-power$/,
    check: ({ inputs, expected }) =>
      inputs.m.map((m: number, i: number) => ({
        what: `m = ${m}`,
        got: sidebandPowerShare(m),
        expected: expected.fraction[i],
        tolerance: { rel: 1e-6 },
      })),
  },
  {
    figure: 'speech spectrum',
    against: 'Byrne et al. 1994',
    errorUnit: 'dB',
    file: 'detect-hear',
    ids: /^LTASS-Byrne$/,
    check: ({ inputs, expected }) => [
      ...inputs.f_Hz.map((f: number, i: number) => ({
        what: `${f} Hz`,
        got: SPEECH_LEVELS[SPEECH_BANDS.indexOf(f)]!,
        expected: expected.dB_SPL[i],
        tolerance: EXACT,
      })),
      {
        what: 'energy sum',
        got: 10 * Math.log10(SPEECH_LEVELS.reduce((sum, l) => sum + 10 ** (l / 10), 0)),
        expected: 70.03,
        tolerance: { abs: 0.005 },
      },
      { what: 'A-weighted', got: aWeightedLevel(SPEECH_BANDS, SPEECH_LEVELS), expected: 65.94, tolerance: { abs: 0.005 } },
    ],
  },
];

export const leftOut: readonly LeftOut[] = [
  {
    file: 'detect-hear',
    ids: /^MPX-BS641$/,
    reason: 'quasi-peak reading of a coloured noise: the engine counts rms and peak only',
  },
  {
    file: 'detect-hear',
    ids: /^SPEECH-Ed5-spectrum$/,
    reason: 'test spectrum of another index (STI); the engine sends long-term average speech',
  },
  { file: 'detect-hear', ids: /^BS468-weighting$/, reason: 'noise meter of a studio: nothing in a set is judged by it' },
  { file: 'detect-hear', ids: /^BS1770-K$/, reason: 'loudness meter of a studio: nothing in a set is judged by it' },
  {
    file: 'detect-hear',
    ids: /^PROG-levels$/,
    reason: 'studio alignment levels before the transmitter; the engine starts at its deviation',
  },
  { file: 'detect-hear', ids: /^SPEECH-power$/, reason: 'acoustic power of a talker in the room, which no step of the path needs' },
  { file: 'antennas', ids: /^band-/, reason: 'limits and rasters of bands: the station gives its own frequency' },
];
