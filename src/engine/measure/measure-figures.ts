import { BANDS } from '../ear/index.ts';
import { type Figure, type Term, term } from '../figure.ts';
import { SOUND_RATE } from '../listen/index.ts';
import type { ListeningMeasures, ToneMeasured } from './model.ts';
import { rangeAbove } from './response.ts';

/** Response that bounds the range that is told [dB], as for earpieces' and loudspeakers' effective range in data sheets: common practice, no source. */
const RANGE_LIMIT = -6;

/** Every measure as a figure with its working: what came out of the earpiece, not what levels foretell. */
export function measureFigures(m: ListeningMeasures): readonly Figure[] {
  return [
    ...toneFigures('rated', 'test tone at rated swing', m.rated),
    ...toneFigures('programme', 'test tone with the power of programme', m.programme),
    ...besideFigures(m),
    ...responseFigures(m),
    ...leakageFigures(m),
    ...stereoFigures(m),
    ...speechFigures(m),
  ];
}

const METHOD = 'from the sound';
const swingUnit = (t: ToneMeasured): string => (t.swing > 2 ? 'Hz' : '1');

function toneFigures(path: string, what: string, t: ToneMeasured): Figure[] {
  const terms = [
    term('f', 'tone', t.frequency, 'Hz'),
    term('m', 'peak swing', t.swing, swingUnit(t)),
    term('V1', 'fundamental', t.rms[1]!, 'V rms'),
  ];
  const fit = 'least squares: mean, cosines and sines of tone and harmonics';
  const holds = 'the station alone, no noise';
  const harmonic = (n: number): Figure[] =>
    t.rms.length > n
      ? [
          {
            name: `measured.${path}.harmonic${n}`,
            label: `${n === 2 ? 'second' : 'third'} harmonic, ${what}`,
            value: t.rms[1]! > 0 ? t.rms[n]! / t.rms[1]! : null,
            unit: '1',
            method: METHOD,
            working: { formula: `V${n}/V1`, terms: [...terms, term(`V${n}`, 'harmonic', t.rms[n]!, 'V rms')], source: fit, holds },
          },
        ]
      : [];
  return [
    {
      name: `measured.${path}.level`,
      label: `earpiece voltage, ${what}`,
      value: t.level,
      unit: 'dB re 1 V rms',
      method: METHOD,
      working: { formula: '20 log10(V1/1 V)', terms, source: fit, holds },
    },
    {
      name: `measured.${path}.soundLevel`,
      label: `sound pressure, ${what}`,
      value: t.soundLevel,
      unit: 'dB SPL',
      method: METHOD,
      working: {
        formula: '20 log10(V1/1 V) + S(f)',
        terms: [...terms, term('S', 'sensitivity of the earpiece for 1 V', t.soundLevel - t.level, 'dB SPL')],
        source: 'sensitivity on the earpiece’s coupler',
        holds,
      },
    },
    {
      name: `measured.${path}.thd`,
      label: `total harmonic distortion, ${what}`,
      value: t.rms[1]! > 0 ? t.thd : null,
      unit: '1',
      method: METHOD,
      working: {
        formula: 'sqrt(V2^2 + V3^2 + ...)/V1',
        terms: [...terms, term('f_max', 'highest harmonic counted', t.top, 'Hz')],
        source: 'ATIS Telecom Glossary: over the fundamental, not over the whole',
        holds: `${holds}; harmonics up to 15 kHz`,
      },
    },
    ...harmonic(2),
    ...harmonic(3),
  ];
}

function besideFigures({ sinad, intermodulation: i, rated, listening }: ListeningMeasures): Figure[] {
  const tones = [term('f1', 'lower tone', i.lower, 'Hz'), term('f2', 'upper tone', i.upper, 'Hz')];
  const order = (n: 2 | 3): Figure => ({
    name: `measured.intermodulation.${n === 2 ? 'second' : 'third'}`,
    label: `difference-frequency distortion, ${n === 2 ? 'second' : 'third'} order`,
    value: i.reference > 0 ? (n === 2 ? i.second : i.third) : null,
    unit: '1',
    method: METHOD,
    working: {
      formula: n === 2 ? 'V(f2 - f1)/(2 V(f2))' : '(V(2 f1 - f2) + V(2 f2 - f1))/(2 V(f2))',
      terms: [
        ...tones,
        term('V(f2)', 'upper tone', i.reference / 2, 'V rms'),
        ...(n === 2
          ? [term('V(f2 - f1)', 'difference tone', i.products[0], 'V rms')]
          : [term('V(2 f1 - f2)', 'product below', i.products[1], 'V rms'), term('V(2 f2 - f1)', 'product above', i.products[2], 'V rms')]),
      ],
      source: 'IEC 60268-3; sum of both products of third order from memory',
      holds:
        'both tones at half of rated swing each, the station alone, no noise; an earpiece that favours low tones raises the second order',
    },
  });
  return [
    {
      name: 'measured.sinad',
      label: 'signal over noise and distortion, rated tone',
      value: sinad.ratio,
      unit: 'dB',
      method: METHOD,
      working: {
        formula: '10 log10((S^2 + R^2)/R^2)',
        terms: [
          term('S', 'tone', sinad.signal, 'V rms'),
          term('R', 'all else, 200 Hz to 15 kHz, unweighted', sinad.rest, 'V rms'),
          term('m', 'peak swing', rated.swing, swingUnit(rated)),
          term('N', 'stations on the air', listening.heard.length, '1'),
        ],
        source: 'FED-STD-1037C, SINAD, sense 2; band of IEC 60315-4 (from memory)',
        holds: `noise on, neighbours carrying speech-shaped noise; ${leftOut(listening.leftOut.length)}`,
      },
    },
    order(2),
    order(3),
  ];
}

function responseFigures({ response }: ListeningMeasures): Figure[] {
  const { low, high } = rangeAbove(response, RANGE_LIMIT);
  const end = (side: 'low' | 'high', value: number): Figure => ({
    name: `measured.response.${side}`,
    label: `${side === 'low' ? 'lowest' : 'highest'} frequency heard within 6 dB of 1 kHz`,
    value,
    unit: 'Hz',
    method: METHOD,
    working: {
      formula: 'L(f) - L(1 kHz) = -6 dB; L: sound pressure by the audio of the transmitter',
      terms: response.map((p) => term(`L(${p.nominal} Hz)`, 'sound pressure over that at 1 kHz', p.sound, 'dB')),
      source: 'tones in third octaves (IEC 61260-1), none where a product of second or third order falls on another',
      holds: 'transmitter’s pre-emphasis is in it; all tones together have the power of programme; the station alone, no noise',
    },
  });
  return [end('low', low), end('high', high)];
}

function leakageFigures({ leakage: l, listening, station }: ListeningMeasures): Figure[] {
  const near = listening.heard.filter((a) => a.name !== station).length;
  const terms = [term('N', 'neighbours on the air', near, '1')];
  const holds = `${leftOut(listening.leftOut.length)}; both sides with programme of the same power`;
  const make = (name: string, label: string, value: number | null, formula: string, source: string): Figure => ({
    name: `measured.leakage.${name}`,
    label,
    value,
    unit: 'dB',
    method: l === null ? 'no other station near enough' : METHOD,
    working: { formula, terms, source, holds },
  });
  const run =
    'wanted carrier bare, neighbours with speech-shaped noise, no noise of the set; over the wanted programme with no other on the air';
  return [
    make(
      'unweighted',
      'neighbours over the wanted programme',
      l?.unweighted ?? null,
      '10 log10(sum V_leak^2/sum V_wanted^2), 141 Hz to 8.9 kHz',
      run,
    ),
    make(
      'weighted',
      'the same as sound, A-weighted',
      l?.weighted ?? null,
      '10 log10(sum p_leak^2 A/sum p_wanted^2 A)',
      `${run}; IEC 61672-1`,
    ),
    make(
      'whistles',
      'whistles, beats and distortion of neighbours over the wanted programme',
      l?.whistles ?? null,
      'what follows no neighbour’s programme linearly',
      'coherent output power',
    ),
    ...(l?.neighbours ?? []).map((n) =>
      make(
        `neighbour.${n.name}`,
        `programme of ${n.name} over the wanted one`,
        n.level,
        '|S_yx|^2/S_xx over the bands of speech',
        'coherent output power',
      ),
    ),
  ];
}

function stereoFigures({ stereo, rated }: ListeningMeasures): Figure[] {
  if (stereo === null) return [];
  const terms = [term('V1', 'test tone at rated swing', rated.rms[1]!, 'V rms')];
  const make = (name: string, label: string, value: number, method: string, formula: string, holds: string): Figure => ({
    name: `measured.stereo.${name}`,
    label,
    value,
    unit: 'dB',
    method,
    working: { formula, terms, source: 'Rec. ITU-R BS.450-3 for what is sent', holds },
  });
  return [
    make('pilot', 'pilot at the earpiece over the rated tone', stereo.pilot, METHOD, '20 log10(V(19 kHz)/V1)', 'bare carrier'),
    make(
      'subcarrier',
      'difference signal about 38 kHz over the rated tone',
      stereo.subcarrier,
      'measured pilot and audio network',
      'L(19 kHz) + 20 log10(0.45 G(38 kHz)/(0.0636 G(19 kHz))), G = |Z T/(1 + g Z)|',
      `one tone, full swing, sides opposed; the sound itself ends at ${SOUND_RATE / 2e3} kHz; the tank taken as quick`,
    ),
    make(
      'difference',
      'difference signal heard, over the rated tone',
      stereo.difference,
      METHOD,
      '20 log10(V(200 Hz to 15 kHz)/V1)',
      'one tone, full swing, sides opposed: an ideal mono set is silent',
    ),
  ];
}

function speechFigures({ speech, listening }: ListeningMeasures): Figure[] {
  const { hearing, sound, found } = speech;
  const drowned = found.filter((f) => !f).length;
  const terms: Term[] = BANDS.flatMap((f, b) => [
    term(`P(${f} Hz)`, 'programme', sound.programme[b]!, 'dB SPL'),
    term(`D(${f} Hz)`, 'disturbance', sound.disturbance[b]!, 'dB SPL'),
  ]);
  const split = 'coherent output power (Bendat & Piersol, from memory; for intelligibility, Kates & Arehart 2005)';
  const holds = `noise on, neighbours with speech-shaped noise; ${leftOut(listening.leftOut.length)}; ${
    drowned > 0
      ? `in ${drowned} bands the programme is drowned too deep to be found, and stands as the station alone has it`
      : 'found in all bands'
  }`;
  const make = (
    name: string,
    label: string,
    value: number | null,
    unit: string,
    formula: string,
    source: string,
    with_: readonly Term[],
  ): Figure => ({
    name: `measured.speech.${name}`,
    label,
    value,
    unit,
    method: METHOD,
    working: { formula, terms: with_, source, holds },
  });
  return [
    make('sii', 'speech intelligibility index', hearing.sii, '1', 'ANSI S3.5 of P and D', `ANSI S3.5-1997; ${split}`, terms),
    make('level', 'programme at the ear, all bands', hearing.level, 'dB SPL', '10 log10 sum 10^(P/10)', split, terms),
    make('levelA', 'programme at the ear, A-weighted', hearing.levelA, 'dB(A)', '10 log10 sum 10^((P_ff + A)/10)', 'IEC 61672-1', terms),
    make(
      'loudnessLevel',
      'as loud as a 1 kHz tone of',
      hearing.loudnessLevel,
      'phon',
      'ISO 532-1, stationary, of P in quiet',
      'ISO 532-1:2017',
      terms,
    ),
    make(
      'disturbance',
      'all that is not programme over the programme',
      speech.disturbance,
      'dB',
      '10 log10(sum S_rest/sum S_coherent), 141 Hz to 8.9 kHz',
      split,
      [],
    ),
    make(
      'distortion',
      'distortion of the programme, the station alone',
      speech.distortion,
      'dB',
      'the same, without noise and neighbours',
      split,
      [],
    ),
    make(
      'hush',
      'programme beside the others over the same alone',
      speech.hush,
      'dB',
      '10 log10(sum S_coherent/sum S_coherent alone)',
      split,
      [],
    ),
  ];
}

const leftOut = (count: number): string =>
  count === 0
    ? 'all stations of the place on the air'
    : `${count} stations beyond the window are not on the air: optimistic where one of them is strong`;
