import { type Figure, term } from '../figure.ts';
import { amplitudeRatio, C, powerRatio } from '../numeric/index.ts';
import type { Evaluation } from './evaluate.ts';
import type { RestPoint } from './levels.ts';
import type { PowerBudget } from './power-budget.ts';
import type { Receiver } from './receiver.ts';
import type { Signal } from './signal.ts';

/** One rung: the level there, and what the way from the rung above cost. */
export interface Rung {
  readonly figure: Figure;
  /** [dB], positive for a loss; null where the two rungs are of different kinds and "loss" has no meaning */
  readonly cost: number | null;
  /** the step that takes this loss, named as its stage: `aerial`, `tank`, `detector`, `phones` */
  readonly stage: 'place' | 'aerial' | 'tank' | 'detector' | 'phones' | 'ear';
}

/** The level at every step from the mast to the ear, for the rated tone, and for speech where it says so. */
export function ladder(receiver: Receiver, signal: Signal, e: Evaluation, budget: PowerBudget): readonly Rung[] {
  const { received } = signal;
  const { rated, rest, hearing } = e;
  const first = receiver.audio.harmonics[1]!;
  const tone = rated.frequency;
  const rms = rated.swing * Math.SQRT1_2;
  const shortCircuit = Math.abs(rest.sensitivity) * rms;
  const audioAvailable = rest.outputConductance > 0 ? shortCircuit ** 2 / (4 * rest.outputConductance) : 0;
  const swingUnit = received.station.modulation.kind === 'fm' ? 'Hz' : '1';
  const resistance = budget.sourceResistance;
  const bestBand = Math.max(...hearing.headroom);
  const rungs: Rung[] = [
    {
      stage: 'place',
      cost: null,
      figure: {
        name: 'ladder.field',
        label: 'field strength at the aerial',
        value: received.field,
        unit: 'V/m rms',
        method: received.method,
        ...band(received.field, received.spread),
        working: {
          formula: 'E = E_free-space + sum of steps, in dB',
          terms: received.steps.map((s) => term('', s.label, s.decibels, 'dB')),
          source: [...new Set(received.steps.map((s) => s.source))].join('; '),
          holds: `median of places; standard deviation ${received.spread.toFixed(1)} dB`,
        },
      },
    },
    {
      stage: 'aerial',
      cost: null,
      figure: {
        name: 'ladder.emf',
        label: 'open-circuit voltage of the aerial',
        value: signal.emf,
        unit: 'V rms',
        method: receiver.aerial?.method ?? 'small loop: the coil itself',
        working: {
          formula: 'V = h_e E, horizontal and vertical parts and scattered waves added as powers, their phases unknown',
          terms: [
            term('h_e', 'effective length toward the station', signal.effectiveLength, 'm'),
            term('E', 'field', received.field, 'V/m rms'),
          ],
          source: receiver.aerial?.source ?? 'Balanis, Antenna Theory, sec. 5.2: h_e = 2 pi N A / lambda',
        },
      },
    },
    {
      stage: 'aerial',
      cost: resistance > 0 ? powerRatio(resistance, signal.radiationResistance) : null,
      figure: {
        name: 'ladder.available',
        label: 'power the aerial could hand over',
        value: budget.available,
        unit: 'W',
        method: 'conjugate match',
        working: {
          formula: 'P_av = V^2 / (4 R)',
          terms: [
            term('V', 'open-circuit voltage', signal.emf, 'V rms'),
            term('R', 'source resistance', resistance, 'ohm'),
            term('R_r', 'of it, radiation: the cost is that of the rest, 10 log10(R / R_r)', signal.radiationResistance, 'ohm'),
          ],
          source: 'maximum power theorem',
        },
      },
    },
    {
      stage: 'tank',
      cost: powerRatio(budget.available, budget.intoTank),
      figure: {
        name: 'ladder.intoTank',
        label: 'power into the tank',
        value: budget.intoTank,
        unit: 'W',
        method: 'network by nodes at the carrier',
        working: {
          formula: 'P = Re(V I*) at the aerial terminals, detector as the conductance it shows at this level',
          terms: [
            term('P_av', 'available power', budget.available, 'W'),
            term('G', 'conductance of the detector', rest.radioConductance, 'S'),
          ],
          source: 'nodal analysis; mismatch on purpose includes the detuning to the flank',
        },
      },
    },
    {
      stage: 'tank',
      cost: powerRatio(budget.intoTank, budget.intoDetector),
      figure: {
        name: 'ladder.intoDetector',
        label: 'power into the detector',
        value: budget.intoDetector,
        unit: 'W',
        method: 'network by nodes; describing function',
        working: {
          formula:
            'P = A I1 / 2; the rest of the tank power is heat: ' +
            budget.parts
              .slice(0, 4)
              .map((p) => p.name)
              .join(', '),
          terms: [
            term('A', 'radio amplitude across the detector', rest.amplitude, 'V peak'),
            term('G', 'conductance I1 / A', rest.radioConductance, 'S'),
            ...budget.parts.slice(0, 6).map((p) => term(`P(${p.name})`, `heat in ${p.name}`, p.watts, 'W')),
          ],
          source: 'nodal analysis; describing function of the detector law',
        },
      },
    },
    {
      stage: 'detector',
      cost: powerRatio(budget.intoDetector, audioAvailable),
      figure: {
        name: 'ladder.audioAvailable',
        label: 'audio power the detector could hand over',
        value: audioAvailable,
        unit: 'W',
        method: 'slope of the describing function',
        working: {
          formula: 'P = i^2 / (4 g), i = s m / sqrt(2)',
          terms: [
            term('s', 'detector current by modulation', Math.abs(rest.sensitivity), `A/${swingUnit}`),
            term('m', 'rated swing', rated.swing, swingUnit),
            term('g', 'conductance of the detector output', rest.outputConductance, 'S'),
          ],
          source: 'Norton equivalent of the detector at rest',
        },
      },
    },
    {
      stage: 'phones',
      cost: matchingCost(receiver, rest, tone),
      figure: {
        name: 'ladder.audioVoltage',
        label: 'audio voltage at the earpiece, rated tone',
        value: rated.earpiece[1]!,
        unit: 'V rms',
        method: 'harmonic balance',
        working: {
          formula: 'v = z * i(v) over one period of the tone; V = |T| I_1',
          terms: [
            term('f', 'tone', tone, 'Hz'),
            term('Z', 'load at the tone', C.abs(first.load), 'ohm'),
            term('T', 'earpiece volts per ampere', C.abs(first.transfer), 'ohm'),
            term('H2', 'second harmonic', rated.secondHarmonic, '1'),
            term('H3', 'third harmonic', rated.thirdHarmonic, '1'),
            term(
              'g',
              'conductance of the detector output: the cost is against an ideal transformer of the best ratio',
              rest.outputConductance,
              'S',
            ),
          ],
          source: 'Kundert & Sangiovanni-Vincentelli 1986 (harmonic balance), quasi-static in the tank',
        },
      },
    },
    {
      stage: 'phones',
      cost: null,
      figure: {
        name: 'ladder.audioPower',
        label: 'audio power into the earpiece, rated tone',
        value: rated.audioPower,
        unit: 'W',
        method: 'audio network by nodes',
        working: {
          formula: 'P = Re(V I*) in the earpiece',
          terms: [term('V', 'earpiece voltage', rated.earpiece[1]!, 'V rms')],
          source: 'nodal analysis; a piezo earpiece takes mostly reactive power, so this is small by nature and no measure of the match',
        },
      },
    },
    {
      stage: 'phones',
      cost: null,
      figure: {
        name: 'ladder.soundLevel',
        label: 'sound pressure level, rated tone',
        value: rated.level[1]!,
        unit: 'dB SPL',
        method: 'earpiece sensitivity',
        ...spreadBand(rated.level[1]!, receiver.set.phones.earpiece.sensitivitySpread),
        working: {
          formula: 'L = S + 20 log10(V / 1 V)',
          terms: [
            term('S', 'sensitivity at the tone', receiver.phones.sensitivity(tone), 'dB SPL for 1 V rms'),
            term('V', 'earpiece voltage', rated.earpiece[1]!, 'V rms'),
          ],
          source: 'earpiece data in the set',
        },
      },
    },
    {
      stage: 'ear',
      cost: null,
      figure: {
        name: 'ladder.overThreshold',
        label: 'speech over the threshold of hearing, best band',
        value: hearing.overThreshold,
        unit: 'dB',
        method: 'band levels against the threshold',
        working: {
          formula: 'max over bands of L_band - threshold',
          terms: [term('L', 'speech, all bands', hearing.level, 'dB SPL'), term('A', 'the same, A-weighted', hearing.levelA, 'dB(A)')],
          source: 'threshold of the coupler: ISO 389; speech spectrum: Byrne et al. 1994',
        },
      },
    },
    {
      stage: 'ear',
      cost: null,
      figure: {
        name: 'ladder.overNoise',
        label: "speech over room noise and the set's own, best band",
        value: hearing.overNoise,
        unit: 'dB',
        method: 'band levels against masking',
        working: {
          formula: 'max over bands of L_band - (masking spectrum level + critical ratio)',
          terms: [term('h', 'over the greater of threshold and masking, best band', bestBand, 'dB')],
          source: 'ANSI S3.5-1997 for the spread of masking',
        },
      },
    },
    {
      stage: 'ear',
      cost: null,
      figure: {
        name: 'ladder.sii',
        label: 'speech intelligibility index',
        value: hearing.sii,
        unit: '1',
        method: 'one-third octave procedure',
        working: {
          formula: 'SII = sum of I_i A_i',
          terms: [
            term('d', 'distortion of the slope against speech', e.distortion, 'dB'),
            term('n', 'other stations against speech', e.neighbours, 'dB'),
            term('r', 'noise of the set against speech', e.noise, 'dB'),
          ],
          source: 'ANSI S3.5-1997, one-third octave bands',
          holds: 'above 0.75 good, below 0.45 poor (ANSI S3.5, from memory)',
        },
      },
    },
  ];
  return rungs;
}

/**
 * What the way from the detector to the earpiece costs in voltage on the earpiece, against one ideal transformer of the best ratio [dB].
 *
 * The detector is i beside g, the earpiece |Y| e^(jp); through n : 1 its voltage is i/|n g + Y/n|, greatest at n^2 = |Y|/g, where it is
 * i/(sqrt(g |Y|) 2 cos(p/2)). In power the same ratio, where the earpiece is a resistance; it holds for a piezo too, which takes hardly any.
 * Below zero where an inductance tunes the earpiece. Null where the output has no conductance of its own.
 */
function matchingCost(receiver: Receiver, rest: RestPoint, tone: number): number | null {
  const g = rest.outputConductance;
  if (!(g > 0)) return null;
  const { load, transfer } = receiver.audio.harmonics[1]!;
  const y = C.inv(receiver.phones.earpieceImpedance(tone));
  const size = C.abs(y);
  const best = 1 / (Math.sqrt(g * size) * Math.hypot(1 + y.re / size, y.im / size));
  return amplitudeRatio(best, C.abs(transfer) / C.abs(C.add(C.ONE, C.scale(load, g))));
}

/** Likely range of a field with a spread in dB: about 80 % of places. */
function band(value: number, sigma: number): { low: number; high: number } {
  const k = 10 ** ((1.2816 * sigma) / 20);
  return { low: value / k, high: value * k };
}

function spreadBand(level: number, sigma: number): { low: number; high: number } {
  return { low: level - 1.2816 * sigma, high: level + 1.2816 * sigma };
}
