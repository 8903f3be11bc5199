import {
  BANDS,
  type Figure,
  humpsOf,
  leakLoss,
  listeningFigures,
  type PassLevel,
  REFERENCE_SOUND_PRESSURE,
  soundFigures,
  term,
  tunedTo,
} from '#engine';
import type { Plan } from './options.ts';
import type { Prepared } from './prepare.ts';
import type { Rendered } from './render.ts';

/** Limits for hearing are meant of a field: from the tables of thresholds speech reads so much more under an earpiece. */
const UNDER_EARPIECE =
  'pressure under the earpiece, weighted as it stands: speech reads 4 to 7 dB more than in the field that sounds the same, so a caution comes early';

/** Level of a piece of sound measured in pascals [dB SPL]. */
export const soundLevelOf = (p: PassLevel): number => p.level - 20 * Math.log10(REFERENCE_SOUND_PRESSURE);

/** What a person wants to know of the sound: where the dial stood, how loud it is, what full scale means. */
export function soundOfSet(prepared: Prepared, plan: Plan, rendered: Rendered): readonly Figure[] {
  const { own, all } = rendered;
  const level = (name: string, label: string, value: number | null, unit: string, formula: string, holds?: string): Figure => ({
    name: `sound.${name}`,
    label,
    value,
    unit,
    method: 'from the sound itself, at the ear',
    working: {
      formula,
      terms: [term('T', 'length of the sound', rendered.seconds, 's'), term('p0', 'reference', REFERENCE_SOUND_PRESSURE, 'Pa')],
      source: 'IEC 61672-1:2013, time-averaged level',
      ...(holds === undefined ? {} : { holds }),
    },
  });
  return [
    ...(prepared.dialled.turn ? passFigures(prepared, rendered) : dialFigures(prepared)),
    level('level', 'sound of the set: programme, neighbours and noise', own.level, 'dB SPL', '20 log10(rms p / p0)'),
    ...(prepared.dialled.turn ? [] : foretold(prepared)),
    level('levelAll', 'all in the file, with noise of room and limit of hearing', all.level, 'dB SPL', '20 log10(rms p / p0)'),
    level('loudest', 'loudest 0.7 s of all, A-weighted', all.loudestA, 'dB(A)', '20 log10(rms p_A / p0), the greatest', UNDER_EARPIECE),
    ...soundFigures(plan.scale, plan.encoding, all.loudestA),
  ];
}

/** How the set was followed: for a person who doubts the sound. */
export const followed = ({ listening }: Prepared): readonly Figure[] => listeningFigures(listening);

function dialFigures({ reception, dialled, station }: Prepared): readonly Figure[] {
  const { angle } = dialled;
  const tuned = tunedTo(reception.receiver, reception.signals[dialled.station]!.arrival, angle);
  const terms = [term('a', 'angle of the dial', angle, 'rad'), term('f0', 'carrier', station.frequency, 'Hz')];
  const figure = (name: string, label: string, value: number | null, unit: string, method: string, formula: string): Figure => ({
    name: `dial.${name}`,
    label,
    value,
    unit,
    method,
    working: { formula, terms, source: 'nodal analysis, aerial joined, detector at rest' },
  });
  const resonance = 'Im Y(top of the tank) = 0';
  return [
    figure(
      'angle',
      'dial, from least capacitance',
      angle,
      'rad',
      'as asked for',
      `best: greatest audio, better understood; f: ${resonance}`,
    ),
    figure('tuned', 'the set is tuned to', tuned, 'Hz', 'network by nodes', resonance),
    figure('beside', 'beside the carrier by', tuned === null ? null : tuned - station.frequency, 'Hz', 'network by nodes', 'f - f0'),
  ];
}

/** What levels say of the same sound, brought from the coupler to the ear. */
function foretold({ dialled, programme, reception }: Prepared): readonly Figure[] {
  const { rated, sound } = dialled.evaluation;
  const tone = programme.sent.tone === rated.frequency;
  const lost = (frequency: number): number => leakLoss(reception.receiver.phones.coupling, frequency);
  const speech = sound.programme.reduce((sum, level, b) => sum + 10 ** ((level - lost(BANDS[b]!)) / 10), 0);
  return [
    {
      name: 'sound.foretold',
      label: tone ? 'the rated tone by steady calculation' : 'programme of speech by steady calculation',
      value: tone ? rated.level[1]! - lost(rated.frequency) : 10 * Math.log10(speech),
      unit: 'dB SPL',
      method: 'levels, as `hear` has them, at the ear',
      working: {
        formula: tone ? 'L(V) - leak, V of v = z * i(v), fundamental' : 'sum of L - leak over third octaves of 160 Hz to 8 kHz',
        terms: [
          term('a', 'angle of the dial', dialled.angle, 'rad'),
          term('leak', 'lost at 1 kHz by an earpiece that does not seal', lost(1000), 'dB'),
        ],
        source: 'harmonic balance, quasi-static in the tank',
        holds: tone ? 'one tone, no neighbours' : 'speech-shaped programme; music and pauses differ by some decibels',
      },
    },
  ];
}

function passFigures({ reception, dialled, programme, station }: Prepared, { pass }: Rendered): readonly Figure[] {
  const { receiver, signals } = reception;
  const { arrival } = signals[dialled.station]!;
  const beside = (angle: number): number | null => {
    const tuned = tunedTo(receiver, arrival, angle);
    return tuned === null ? null : tuned - station.frequency;
  };
  const turn = dialled.turn!;
  const { loudest, dip } = humpsOf(pass ?? [], dialled.dial!.resonance.angle, station.modulation.kind === 'am' ? 1 : 2);
  const method = 'from the sound itself';
  const working = {
    formula: programme.sent.tone === null ? 'rms of 50 ms' : 'line of the tone in 50 ms, rms',
    terms: [
      term('a1', 'dial at the beginning', turn.from, 'rad'),
      term('a2', 'at the end', turn.to, 'rad'),
      term('T', 'time of the turn', turn.seconds, 's'),
    ],
    source: 'measured in the sound',
  };
  const of = (name: string, label: string, p: PassLevel): readonly Figure[] => [
    { name: `turn.${name}.level`, label, value: soundLevelOf(p), unit: 'dB SPL', method, working },
    { name: `turn.${name}.angle`, label: `${label}: dial`, value: p.angle, unit: 'rad', method, working },
    { name: `turn.${name}.beside`, label: `${label}: tuned beside the carrier by`, value: beside(p.angle), unit: 'Hz', method, working },
  ];
  if (!dip) return loudest.flatMap((p) => of('loudest', 'loudest', p));
  return [...of('first', 'first hump', loudest[0]!), ...of('dip', 'dip between them', dip), ...of('second', 'second hump', loudest[1]!)];
}
