import { BANDS } from '../bands.ts';
import { type Figure, term } from '../figure.ts';
import { aWeightedLevel } from './a-weighting.ts';
import type { EarDescription } from './description.ts';
import { toneLoudnessLevel } from './equal-loudness.ts';
import { CRITICAL_RATIO, ONE_EAR_FIELD_THRESHOLD } from './field-transfer.ts';
import type { Hearing, HearingWorking, SoundAtEar } from './model.ts';
import { NC_OCTAVES, NR_OCTAVES, noiseCriterionRating, noiseRating } from './noise-curves.ts';
import { octaveLevel, ROOM_BANDS } from './room-noise.ts';
import { SII_IMPORTANCE } from './sii-tables.ts';
import { speechIntelligibilityIndex } from './speech-intelligibility-index.ts';

/** Every number of the ear that a person may doubt, with its working. */
export function hearingFigures(h: Hearing): readonly Figure[] {
  const { description, sound } = h.working;
  return [...ofProgramme(description, sound, h, h.working), ...ofRoom(description, h.working)];
}

function ofProgramme(d: EarDescription, sound: SoundAtEar, h: Hearing, w: HearingWorking): Figure[] {
  const field = (i: number): number => sound.programme[i]! + ONE_EAR_FIELD_THRESHOLD[i]! - sound.threshold[i]!;
  const best = (value: (i: number) => number): number => BANDS.reduce((top, _, i) => (value(i) > value(top) ? i : top), 0);
  const quiet = best((i) => field(i) - ONE_EAR_FIELD_THRESHOLD[i]! - w.shift[i]!);
  const noisy = best((i) => field(i) - w.masking[i]! - CRITICAL_RATIO[i]!);
  const loudest = best(field);
  const shares = new Float64Array(BANDS.length);
  speechIntelligibilityIndex(w.speech, w.noise, w.shift, shares);
  const hearing = d.hearingLevel.length === 0 ? 'normal hearing' : 'hearing level as given';
  const transfer =
    'coupler levels brought to the free field by their distance from threshold (ISO 389-7 less 1.7 dB advantage of two ears)';
  return [
    {
      name: 'ear.sii',
      label: 'speech intelligibility index',
      value: h.sii,
      unit: '1',
      method: 'ANSI S3.5, one-third octaves',
      working: {
        formula: 'sum over bands of I L K; K = (E - D + 15)/30, D = max(Z, X + T), L = 1 - (E - U - 10)/160',
        terms: BANDS.map((f, i) => term(`I L K, ${f} Hz`, `share of the band, ${SII_IMPORTANCE[i]!} at best`, shares[i]!, '1')),
        source: 'ANSI S3.5-1997 (R2017), Table 3',
        holds: `160 Hz to 8 kHz, ${hearing}; ${transfer}; average speech, adults who know the language`,
      },
    },
    {
      name: 'ear.overThreshold',
      label: 'best band over the hearing threshold',
      value: h.overThreshold,
      unit: 'dB',
      method: hearing,
      working: {
        formula: 'max over bands of L - T_ref - HL + b',
        terms: [
          term('f', 'the band', BANDS[quiet]!, 'Hz'),
          term('L', 'band level of the programme on the coupler', sound.programme[quiet]!, 'dB SPL'),
          term('T_ref', 'reference threshold on the coupler', sound.threshold[quiet]!, 'dB SPL'),
          term('HL - b', 'hearing level less 1.7 dB if two ears listen', w.shift[quiet]!, 'dB'),
        ],
        source: 'reference threshold of the earpiece; ANSI S3.5-1997 for two ears',
        holds: 'a third octave of noise is heard at the level of a tone of its middle frequency',
      },
    },
    {
      name: 'ear.overNoise',
      label: 'best band over what the room and the set mask',
      value: h.overNoise,
      unit: 'dB',
      method: 'spread of masking and critical ratio',
      working: {
        formula: 'max over bands of L_ff - Z - CR',
        terms: [
          term('f', 'the band', BANDS[noisy]!, 'Hz'),
          term('L_ff', 'band level of the programme as a free field', field(noisy), 'dB SPL'),
          term('Z', 'spectrum level of masking', w.masking[noisy]!, 'dB SPL/Hz'),
          term('CR', 'critical ratio', CRITICAL_RATIO[noisy]!, 'dB'),
        ],
        source: 'ANSI S3.5-1997 (spread); critical ratio implied by ISO 389-7 and ANSI S3.5',
        holds: transfer,
      },
    },
    {
      name: 'ear.level',
      label: 'programme at the ear, all bands',
      value: h.level,
      unit: 'dB SPL',
      method: 'energy sum on the coupler',
      working: {
        formula: '10 log10 sum 10^(L/10)',
        terms: [term('L', 'loudest band', sound.programme[best((i) => sound.programme[i]!)]!, 'dB SPL')],
        source: 'definition',
      },
    },
    {
      name: 'ear.levelA',
      label: 'programme at the ear, A-weighted',
      value: h.levelA,
      unit: 'dB(A)',
      method: 'as the free field that would sound the same',
      working: {
        formula: '10 log10 sum 10^((L_ff + A)/10)',
        terms: [term('L_ff', 'loudest band as a free field', field(loudest), 'dB SPL')],
        source: 'IEC 61672-1 Annex E; free-field related as in ISO 11904',
        holds: transfer,
      },
    },
    {
      name: 'ear.loudnessLevel',
      label: 'as loud as a 1 kHz tone of',
      value: h.loudnessLevel,
      unit: 'phon',
      method: 'ISO 532-1, stationary, in quiet',
      working: {
        formula: '40 + 10 log2 N (N of 1 sone and more); 40 (N + 0.0005)^0.35 below',
        terms: [
          term('N', 'loudness', w.loudness, 'sone'),
          term('L_ff', 'loudest band as a free field', field(loudest), 'dB SPL'),
          term('f', 'that band', BANDS[loudest]!, 'Hz'),
          term(
            'L_N',
            'a lone tone of that level and frequency by ISO 226:2023',
            toneLoudnessLevel(BANDS[loudest]!, field(loudest)),
            'phon',
          ),
        ],
        source: 'ISO 532-1:2017 (Zwicker); ISO 226:2023 for the lone tone; one ear 1/1.5 of two (ISO 532-2, from memory)',
        holds: `in quiet, ${hearing}; partial masking by the room is not counted; null below threshold`,
      },
    },
  ];
}

function ofRoom(d: EarDescription, w: HearingWorking): Figure[] {
  const kind = d.room.kind;
  const octaves = (centres: readonly number[]): number[] => centres.map((f) => octaveLevel(w.room, f));
  const at1kHz = term('L', 'third octave of 1 kHz in the room', w.room(1000), 'dB SPL');
  const holds =
    kind === 'a-weighted'
      ? 'the spectrum is not known: one that falls by 5 dB per octave is taken'
      : 'outside the bands that are known the spectrum is carried on by 5 dB per octave, rising downwards';
  return [
    {
      name: 'ear.room.levelA',
      label: 'noise of the room, A-weighted',
      value: aWeightedLevel(ROOM_BANDS, ROOM_BANDS.map(w.room)),
      unit: 'dB(A)',
      method: kind,
      working: { formula: '10 log10 sum 10^((L + A)/10), 25 Hz to 10 kHz', terms: [at1kHz], source: 'IEC 61672-1 Annex E', holds },
    },
    {
      name: 'ear.room.noiseCriterion',
      label: 'noise criterion of the room',
      value: noiseCriterionRating(octaves(NC_OCTAVES)),
      unit: 'NC',
      method: 'highest curve touched',
      working: { formula: 'max over octaves of NC(f, L)', terms: [at1kHz], source: 'Beranek 1957; ANSI S12.2', holds },
    },
    {
      name: 'ear.room.noiseRating',
      label: 'noise rating of the room',
      value: noiseRating(octaves(NR_OCTAVES)),
      unit: 'NR',
      method: 'highest curve touched',
      working: { formula: 'max over octaves of (L - a)/b', terms: [at1kHz], source: 'ISO R 1996 (1971)', holds },
    },
  ];
}
