import { SPEED_OF_LIGHT } from '../constants.ts';
import { type Figure, term } from '../figure.ts';
import { C, type Complex } from '../numeric/index.ts';
import type { Feeder } from './description.ts';
import { mustBePositive, mustNotBeNegative } from './given-checks.ts';
import type { AerialAt, AerialModel } from './model.ts';
import { sourceFigures } from './source-figures.ts';

/** dB in one neper. */
const NEPER = 20 / Math.LN10;

/** What a length of line does to a source. */
export interface FeederAt {
  /** open-circuit voltage at the set over that of the aerial alone */
  readonly transfer: Complex;
  /** impedance seen from the set [ohm] */
  readonly impedance: Complex;
  /** reflection coefficient of the aerial on the line */
  readonly reflection: Complex;
  /** loss of the line between its own impedances [dB] */
  readonly matchedLoss: number;
  /** available power at the aerial over that at the set [dB] */
  readonly loss: number;
}

/**
 * Line of real characteristic impedance with loss, as a two-port between aerial and set.
 *
 * g = a + j w/(v c), a = loss sqrt(f/f_loss)/8.686, r = (Z - Z0)/(Z + Z0):
 * Z' = Z0 (1 + r e^(-2gl))/(1 - r e^(-2gl)), V'/V = (1 - r) e^(-gl) / (1 - r e^(-2gl)). Exact for such a line; only decaying exponentials appear.
 *
 * @param source - impedance of the aerial [ohm]
 * Holds for: loss by conductors, growing as the square root of frequency; no current on the outside of the line.
 * Source: Terman, Radio Engineers' Handbook (1943) sec. 3; Pozar, Microwave Engineering, sec. 2.7.
 */
export function throughFeeder(source: Complex, feeder: Feeder, frequency: number): FeederAt {
  const matchedLoss = feeder.loss * feeder.length * Math.sqrt(frequency / feeder.lossFrequency);
  const phase = (2 * Math.PI * frequency * feeder.length) / (feeder.velocityFactor * SPEED_OF_LIGHT);
  const z0 = C.complex(feeder.impedance);
  const reflection = C.div(C.sub(source, z0), C.add(source, z0));
  const once = C.scale(C.cis(-phase), Math.exp(-matchedLoss / NEPER));
  const back = C.mul(reflection, C.mul(once, once));
  const standing = C.sub(C.ONE, back);
  const impedance = C.scale(C.div(C.add(C.ONE, back), standing), feeder.impedance);
  const transfer = C.div(C.mul(C.sub(C.ONE, reflection), once), standing);
  const gain = (C.abs2(transfer) * source.re) / impedance.re;
  return { transfer, impedance, reflection, matchedLoss, loss: gain > 0 ? -10 * Math.log10(gain) : Number.POSITIVE_INFINITY };
}

function check(feeder: Feeder): void {
  mustNotBeNegative('aerial.feeder.length', feeder.length, 'm');
  mustBePositive('aerial.feeder.impedance', feeder.impedance, 'ohm');
  mustBePositive('aerial.feeder.velocityFactor', feeder.velocityFactor, '1');
  mustNotBeNegative('aerial.feeder.loss', feeder.loss, 'dB/m');
  mustBePositive('aerial.feeder.lossFrequency', feeder.lossFrequency, 'Hz');
}

/**
 * The aerial as the set sees it through its feeder.
 *
 * Effective lengths take the transfer of voltage. Of the resistance seen, |V'/V|^2 R_r is radiation (a current into the line at the
 * set reaches the aerial in that ratio, by reciprocity); the rest heats metal, earth and line.
 */
export function withFeeder(model: AerialModel, feeder: Feeder): AerialModel {
  check(feeder);
  const behind = (near: AerialAt, line: FeederAt): AerialAt => ({
    impedance: line.impedance,
    horizontal: C.mul(near.horizontal, line.transfer),
    vertical: C.mul(near.vertical, line.transfer),
    lossResistance: Math.max(0, line.impedance.re - C.abs2(line.transfer) * (near.impedance.re - near.lossResistance)),
  });
  return {
    method: `${model.method}, through feeder`,
    source: `${model.source}; feeder: Pozar, Microwave Engineering, sec. 2.7`,
    at(frequency, arrival) {
      const near = model.at(frequency, arrival);
      return behind(near, throughFeeder(near.impedance, feeder, frequency));
    },
    remarks(frequency) {
      const remarks = [...model.remarks(frequency)];
      if (feeder.loss > 0 && Math.abs(Math.log10(frequency / feeder.lossFrequency)) > 1)
        remarks.push('the loss of the feeder was given at a frequency more than ten times away');
      return remarks;
    },
    figures(frequency, arrival) {
      const near = model.at(frequency, arrival);
      const line = throughFeeder(near.impedance, feeder, frequency);
      return [...model.figures(frequency, arrival), ...feederFigures(feeder, near, behind(near, line), line, frequency)];
    },
  };
}

function feederFigures(feeder: Feeder, near: AerialAt, seen: AerialAt, line: FeederAt, frequency: number): Figure[] {
  const source = 'Pozar, Microwave Engineering, sec. 2.7';
  const holds = 'conductor loss; no current on the outside of the line';
  const terms = [
    term('l', 'length of the feeder', feeder.length, 'm'),
    term('Z0', 'characteristic impedance', feeder.impedance, 'ohm'),
    term('v', 'velocity factor', feeder.velocityFactor, '1'),
    term('A', 'matched loss of the whole length', line.matchedLoss, 'dB'),
    term('R', 'resistance of the aerial', near.impedance.re, 'ohm'),
    term('X', 'reactance of the aerial', near.impedance.im, 'ohm'),
  ];
  const method = 'lossy line';
  const reflected = C.abs2(line.reflection);
  const figure = (name: string, label: string, value: number | null, unit: string, formula: string): Figure => ({
    name: `aerial.feeder.${name}`,
    label,
    value,
    unit,
    method,
    working: { formula, terms, source, holds },
  });
  return [
    figure('matchedLoss', 'loss of the feeder when matched', line.matchedLoss, 'dB', 'A = loss/m * l * sqrt(f/f_loss)'),
    figure('reflection', 'reflection coefficient of the aerial on the feeder', Math.sqrt(reflected), '1', '|Z - Z0| / |Z + Z0|'),
    figure(
      'mismatchLoss',
      'mismatch loss of the aerial on the feeder',
      reflected < 1 ? -10 * Math.log10(1 - reflected) : null,
      'dB',
      '-10 log10(1 - |r|^2)',
    ),
    figure(
      'loss',
      'available power lost in the feeder',
      Number.isFinite(line.loss) ? line.loss : null,
      'dB',
      "-10 log10(|V'/V|^2 R / R'), V'/V = (1 - r) e^(-gl)/(1 - r e^(-2gl))",
    ),
    ...sourceFigures('aerial.feeder.end', method, seen, frequency, {
      resistance: { formula: "R' = Re Z0 (1 + r e^(-2gl))/(1 - r e^(-2gl))", terms, source, holds },
      reactance: { formula: "X' = Im Z0 (1 + r e^(-2gl))/(1 - r e^(-2gl))", terms, source, holds },
      loss: { formula: "R_l' = R' - |V'/V|^2 R_r", terms, source: 'reciprocity of the line', holds },
      effectiveLength: { formula: "h' = h V'/V", terms, source, holds },
    }),
  ];
}
