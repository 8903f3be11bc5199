import { SPEED_OF_LIGHT } from '../constants.ts';
import { term } from '../figure.ts';
import { GivenError } from '../given-error.ts';
import { C } from '../numeric/index.ts';
import { metalLossWorking, straightWireResistance } from './conductor.ts';
import type { AerialDescription } from './description.ts';
import { mustBeNumber, mustBePositive } from './given-checks.ts';
import { LEAST_FEED_CURRENT } from './induced-emf.ts';
import { loopInductance } from './loop-inductance.ts';
import type { AerialAt, AerialModel, Arrival } from './model.ts';
import { sinc, smallAerialResistance } from './sinusoidal-current.ts';
import { smallLoopEffectiveLength } from './small-loop.ts';
import { sourceFigures } from './source-figures.ts';

type Loop = Extract<AerialDescription, { kind: 'loop' }>;

/** More turns than this are a coil, and it belongs in the tank. */
const MOST_TURNS = 500;

/** Turns side by side have at least their wire's diameter from centre to centre. */
function pitchOf(loop: Loop): number {
  return loop.turns > 1 ? (loop.windingLength - loop.wireDiameter) / (loop.turns - 1) : loop.wireDiameter;
}

function check(loop: Loop): void {
  mustBePositive('aerial.diameter', loop.diameter, 'm');
  mustBePositive('aerial.wireDiameter', loop.wireDiameter, 'm');
  mustBePositive('aerial.windingLength', loop.windingLength, 'm');
  if (!(loop.turns >= 1 && loop.turns <= MOST_TURNS))
    throw new GivenError('aerial.turns', `${loop.turns}`, 'a loop has from 1 to 500 turns', 'Give a number of turns in that range.');
  if (loop.wireDiameter > loop.diameter / 4)
    throw new GivenError(
      'aerial.wireDiameter',
      `${loop.wireDiameter} m`,
      `a loop ${loop.diameter} m across cannot be wound of wire that thick`,
      'Give a wire below a quarter of the loop.',
    );
  if (pitchOf(loop) < 0.999 * loop.wireDiameter)
    throw new GivenError(
      'aerial.windingLength',
      `${loop.windingLength} m`,
      `${loop.turns} turns of ${loop.wireDiameter} m wire do not fit into it side by side`,
      `Give ${loop.turns * loop.wireDiameter} m or more.`,
    );
  if (loop.axis.kind === 'horizontal') mustBeNumber('aerial.axis.plane', loop.axis.plane, 'rad');
}

/**
 * Small loop with a winding of its own.
 *
 * Impedance R_r + R_l + j w L; R_r = eta k^2 h^2 / (6 pi), h = k N A. One turn is taken as a shorted line of half its circumference on
 * either side of the gap: with t = k C/2 the mean current is tan t/t of that at the feed, which multiplies h and w L. It is 3 % at C = 0.1 lambda.
 * With more turns the current is taken as even; the winding's own capacitance then belongs to the tank's strays.
 *
 * Holds for C < 0.2 wavelength with one turn, wire below a quarter of a wavelength with more; turns not crowded (proximity is left out).
 * Source: Balanis, Antenna Theory, 3rd ed., sec. 5.2, eqs 5-24, 5-37; shorted line: R. W. P. King, small loop (from memory).
 */
export function loopModel(loop: Loop): AerialModel {
  check(loop);
  const { turns, metal, wireDiameter } = loop;
  const circumference = Math.PI * loop.diameter;
  const areaTurns = (turns * Math.PI * loop.diameter ** 2) / 4;
  const inductance = loopInductance(turns, loop.diameter / 2, wireDiameter / 2, pitchOf(loop));
  const method = turns === 1 ? 'small loop, shorted line' : 'small loop, even current';

  /** Mean current and mean square of it, over that at the feed. */
  const spread = (frequency: number): { mean: number; square: number } => {
    if (turns !== 1) return { mean: 1, square: 1 };
    const t = (Math.PI * frequency * circumference) / SPEED_OF_LIGHT;
    const cos = Math.cos(t);
    const feed = Math.abs(cos) < LEAST_FEED_CURRENT ? Math.sign(cos || 1) * LEAST_FEED_CURRENT : cos;
    return { mean: sinc(t) / feed, square: (1 + sinc(2 * t)) / (2 * feed * feed) };
  };
  const at = (frequency: number, arrival: Arrival): AerialAt => {
    const { mean, square } = spread(frequency);
    const wavelength = SPEED_OF_LIGHT / frequency;
    const h = smallLoopEffectiveLength(areaTurns, frequency, loop.axis, arrival);
    const greatest = (mean * 2 * Math.PI * areaTurns) / wavelength;
    const loss = straightWireResistance(metal, wireDiameter, frequency) * circumference * turns * square;
    return {
      impedance: { re: smallAerialResistance(greatest, wavelength) + loss, im: 2 * Math.PI * frequency * inductance * mean },
      horizontal: C.scale(h.horizontal, mean),
      vertical: C.scale(h.vertical, mean),
      lossResistance: loss,
    };
  };
  return {
    method,
    source: 'Balanis, Antenna Theory, 3rd ed., sec. 5.2',
    at,
    remarks(frequency) {
      const wavelength = SPEED_OF_LIGHT / frequency;
      const remarks: string[] = [];
      if (turns === 1 && circumference > 0.2 * wavelength)
        remarks.push('more than 0.2 wavelength around: no longer a small loop, its current is far from even');
      if (turns > 1 && circumference * turns > 0.25 * wavelength)
        remarks.push('more than a quarter wave of wire: the loop nears its own resonance, which is not in the model');
      if (turns > 1 && pitchOf(loop) < 2 * wireDiameter)
        remarks.push('turns closer than two wire diameters: crowding of the current raises the loss above what is shown');
      return remarks;
    },
    figures(frequency, arrival) {
      const now = at(frequency, arrival);
      const terms = [
        term('N', 'turns', turns, '1'),
        term('D', 'diameter of the loop', loop.diameter, 'm'),
        term('d', 'diameter of the wire', wireDiameter, 'm'),
        term('lambda', 'wavelength', SPEED_OF_LIGHT / frequency, 'm'),
        term('m', 'mean current over that at the feed', spread(frequency).mean, '1'),
      ];
      const holds = 'circumference below 0.2 wavelength (one turn), wire below a quarter wave (more)';
      return [
        ...sourceFigures('aerial', method, now, frequency, {
          resistance: {
            formula: 'R = 320 pi^4 N^2 (A/lambda^2)^2 m^2 + R_l, with 120 pi read as 376.73 ohm',
            terms: [...terms, term('R_l', 'loss resistance', now.lossResistance, 'ohm')],
            source: 'Balanis, Antenna Theory, 3rd ed., eq. 5-24',
            holds,
          },
          reactance: {
            formula: 'X = 2 pi f L m',
            terms: [term('L', 'inductance', inductance, 'H'), ...terms],
            source: 'Balanis, Antenna Theory, 3rd ed., eq. 5-37a; rings summed by Maxwell, Treatise art. 701',
            holds,
          },
          loss: metalLossWorking(terms, metal, wireDiameter, frequency),
          effectiveLength: {
            formula: 'h = (2 pi N A m / lambda) (n x r) . component of the field',
            terms,
            source: 'Balanis, Antenna Theory, 3rd ed., sec. 5.2',
            holds,
          },
        }),
        {
          name: 'aerial.inductance',
          label: 'inductance of the loop',
          value: inductance,
          unit: 'H',
          method: turns === 1 ? 'ring, surface current' : 'sum of rings, surface current',
          working: {
            formula: 'L = N mu0 R [ln(8R/a) - 2] + 2 sum of (N - m) M(m p)',
            terms: terms.slice(0, 3),
            source: 'Grover, Inductance Calculations (1946); Maxwell, Treatise (1873) art. 701',
          },
        },
      ];
    },
  };
}
