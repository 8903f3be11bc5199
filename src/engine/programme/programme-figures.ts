import { type Figure, term } from '../figure.ts';
import { sidebandPowerShare } from './am-sidebands.ts';
import type { ProgrammeDescription } from './description.ts';
import type { ProgrammeModulation } from './modulation.ts';
import { AUDIO_LIMIT, carsonBandwidth, PILOT_SHARE, SUBCARRIER_FREQUENCY } from './multiplex.ts';
import { multiplexPower, multiplexRmsDeviation } from './multiplex-power.ts';
import { preEmphasisGain } from './pre-emphasis.ts';
import { SPEECH_CREST } from './speech-spectrum.ts';
import { crestRoom, programmeSwing, toneSwing } from './swing.ts';

/** What a station is taken to send, with its working. Throws as `programmeSwing` does. */
export function programmeFigures(modulation: ProgrammeModulation, programme: ProgrammeDescription): readonly Figure[] {
  const unit = modulation.kind === 'fm' ? 'Hz' : '1';
  const peak = toneSwing(modulation);
  const swing = programmeSwing(modulation, programme.level);
  const fm = modulation.kind === 'fm';
  return [
    {
      name: 'programme.tone',
      label: fm ? 'peak deviation of the test tone' : 'depth of the test tone',
      value: peak,
      unit: `${unit} peak`,
      method: 'full modulation',
      working: {
        formula: fm && modulation.stereo ? '0.9 D' : fm ? 'D' : 'm',
        terms: [term(fm ? 'D' : 'm', 'full modulation', fm ? modulation.deviation : modulation.depth, unit)],
        source: 'Rec. ITU-R BS.450-3, sec. 2',
        holds: `a tone of ${programme.tone} Hz, its swing taken after pre-emphasis`,
      },
    },
    {
      name: 'programme.swing',
      label: fm ? 'rms deviation of programme' : 'rms depth of programme',
      value: swing,
      unit: `${unit} rms`,
      method: fm ? 'multiplex power limit, pilot taken off' : 'peak depth less the crest of speech',
      working: fm
        ? {
            formula: 'sqrt(d^2 - p^2/2) 10^(level/20)',
            terms: [
              term('d', 'rms of the multiplex at the limit', multiplexRmsDeviation(0, modulation.deviation), 'Hz rms'),
              term('p', 'pilot', modulation.stereo ? PILOT_SHARE * modulation.deviation : 0, 'Hz peak'),
              term('level', 'programme against the limit', programme.level, 'dB'),
            ],
            source: 'Rec. ITU-R BS.412-9, sec. 2.3; BS.450-3',
            holds: 'many stations outside Europe know no such limit and send up to 6 dB more',
          }
        : {
            formula: 'm 10^((level - crest)/20)',
            terms: [
              term('m', 'peak depth', modulation.depth, '1'),
              term('crest', 'peak over rms of speech', SPEECH_CREST, 'dB'),
              term('level', 'programme against that', programme.level, 'dB'),
            ],
            source: 'estimate: crest of uncompressed speech, common practice',
          },
    },
    {
      name: 'programme.crestRoom',
      label: 'room between rms and full swing',
      value: crestRoom(modulation, programme.level),
      unit: 'dB',
      method: 'peak over rms',
      working: {
        formula: '20 log10(peak/rms)',
        terms: [term('peak', 'full swing', peak, unit), term('rms', 'programme', swing, unit)],
        source: 'definition',
        holds: `below ${SPEECH_CREST} dB the station must compress or clip speech; pre-emphasis asks for more`,
      },
    },
    ...(fm ? ofFm(modulation, swing) : ofAm(swing)),
  ];
}

function ofFm(m: Extract<ProgrammeModulation, { kind: 'fm' }>, swing: number): Figure[] {
  const pilot = m.stereo ? PILOT_SHARE * m.deviation : 0;
  const total = Math.hypot(swing, pilot / Math.SQRT2);
  const top = m.stereo ? SUBCARRIER_FREQUENCY + AUDIO_LIMIT : AUDIO_LIMIT;
  return [
    {
      name: 'programme.multiplexPower',
      label: 'power of the whole multiplex against the limit',
      value: multiplexPower(total, m.deviation),
      unit: 'dBr',
      method: 'programme and pilot',
      working: {
        formula: '20 log10(sqrt(rms^2 + p^2/2)/d)',
        terms: [term('rms', 'programme', swing, 'Hz rms'), term('p', 'pilot', pilot, 'Hz peak')],
        source: 'Rec. ITU-R BS.412-9, sec. 2.3',
      },
    },
    {
      name: 'programme.bandwidth',
      label: 'bandwidth of the signal',
      value: carsonBandwidth(m.deviation, top),
      unit: 'Hz',
      method: "Carson's rule",
      working: {
        formula: '2 (D + f_m)',
        terms: [term('D', 'peak deviation', m.deviation, 'Hz'), term('f_m', 'highest frequency of the multiplex', top, 'Hz')],
        source: 'Carson, Proc. IRE 10 (1922) 57',
      },
    },
    {
      name: 'programme.preEmphasis',
      label: 'pre-emphasis at 5 kHz, which the set does not undo',
      value: preEmphasisGain(5000, m.preEmphasis),
      unit: 'dB',
      method: 'time constant',
      working: {
        formula: '10 log10(1 + (2 pi f tau)^2)',
        terms: [term('tau', 'time constant', m.preEmphasis, 's')],
        source: 'Rec. ITU-R BS.450-3, sec. 1.2',
      },
    },
  ];
}

function ofAm(swing: number): Figure[] {
  // a sine of the same power as the programme has sqrt 2 times its rms as peak
  const depth = Math.SQRT2 * swing;
  return [
    {
      name: 'programme.sidebandShare',
      label: "share of the signal's power that carries programme",
      value: sidebandPowerShare(depth),
      unit: '1',
      method: 'sine of the same power',
      working: { formula: 'm^2/(2 + m^2)', terms: [term('m', 'depth of the sine', depth, '1')], source: 'textbook' },
    },
  ];
}
