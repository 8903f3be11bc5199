import { ETA0, SPEED_OF_LIGHT } from '../constants.ts';
import { term } from '../figure.ts';
import { GivenError } from '../given-error.ts';
import { C, linear } from '../numeric/index.ts';
import { arrivalAxes, dot, elementAxis } from './arrival.ts';
import type { AerialDescription } from './description.ts';
import { mustBeNumber, mustBePositive, mustNotBeNegative } from './given-checks.ts';
import type { AerialAt, AerialModel, Arrival } from './model.ts';
import { gainOf, sourceFigures } from './source-figures.ts';

type Given = Extract<AerialDescription, { kind: 'electrical' }>;

/** No aerial of a size a person can put up has more: 20 dB over isotropic. */
const GREATEST_LIKELY_GAIN = 100;

function check(given: Given): void {
  if (given.impedance.length === 0)
    throw new GivenError('aerial.impedance', 'an empty list', 'the aerial has no terminal impedance', 'Give it at one frequency at least.');
  given.impedance.forEach((point, i) => {
    const path = `aerial.impedance[${i}]`;
    mustBePositive(`${path}.frequency`, point.frequency, 'Hz');
    mustBePositive(`${path}.resistance`, point.resistance, 'ohm');
    mustBeNumber(`${path}.reactance`, point.reactance, 'ohm');
    if (i > 0 && !(point.frequency > given.impedance[i - 1]!.frequency))
      throw new GivenError(
        `${path}.frequency`,
        `${point.frequency} Hz`,
        'frequencies must rise',
        'Sort the list; name each frequency once.',
      );
  });
  if (given.gain !== undefined && given.effectiveLength !== undefined)
    throw new GivenError('aerial.gain', `${given.gain} dB`, 'an effective length is given as well', 'Give one of the two.');
  if (given.gain === undefined && given.effectiveLength === undefined)
    throw new GivenError('aerial.gain', 'absent', 'nothing says how much the aerial picks up', 'Give a gain or an effective length.');
  if (given.gain !== undefined) mustBeNumber('aerial.gain', given.gain, 'dB');
  if (given.effectiveLength !== undefined) mustBePositive('aerial.effectiveLength', given.effectiveLength, 'm');
  mustNotBeNegative('aerial.frontToBack', given.frontToBack, 'dB');
  if (given.orientation.kind === 'vertical' && given.frontToBack > 0)
    throw new GivenError(
      'aerial.frontToBack',
      `${given.frontToBack} dB`,
      'a vertical element given without a bearing has no front',
      'Set it to 0.',
    );
}

/**
 * Aerial known by its terminal impedance and its gain or effective length.
 *
 * Impedance: resistance and reactance each read linearly between the given frequencies. Effective length towards broadside
 * |h| = lambda sqrt(G R / (pi eta)), so that the available power |E h|^2/(4R) is E^2/eta lambda^2 G/(4 pi): the gain counts power
 * available at the terminals, losses in it, mismatch not. Pattern: that of a short element across the line of sight, times the
 * amplitude [1 + r + (1 - r) cos x] / 2 with r the back over the front and x the angle from broadside.
 *
 * Holds within the given frequencies; the pattern is a stand-in (a figure of eight, or a cardioid), not measured.
 */
export function givenValuesModel(given: Given): AerialModel {
  check(given);
  const frequencies = given.impedance.map((p) => p.frequency);
  const resistances = given.impedance.map((p) => p.resistance);
  const reactances = given.impedance.map((p) => p.reactance);
  const axis = elementAxis(given.orientation);
  const back = 10 ** (-given.frontToBack / 20);
  const gain = given.gain === undefined ? undefined : 10 ** (given.gain / 10);
  const front = given.orientation.kind === 'horizontal' ? given.orientation.broadside : null;

  const broadside = (frequency: number): number => {
    if (gain === undefined) return given.effectiveLength!;
    return (SPEED_OF_LIGHT / frequency) * Math.sqrt((gain * linear(frequencies, resistances, frequency)) / (Math.PI * ETA0));
  };
  const frontToBack = (arrival: Arrival): number => {
    if (front === null) return 1;
    const cosine = Math.cos(arrival.elevation) * Math.cos(arrival.azimuth - front);
    return (1 + back + (1 - back) * cosine) / 2;
  };
  const at = (frequency: number, arrival: Arrival): AerialAt => {
    const axes = arrivalAxes(arrival);
    const h = broadside(frequency) * frontToBack(arrival);
    return {
      impedance: { re: linear(frequencies, resistances, frequency), im: linear(frequencies, reactances, frequency) },
      horizontal: C.complex(h * dot(axis, axes.horizontal)),
      vertical: C.complex(h * dot(axis, axes.vertical)),
      lossResistance: 0,
    };
  };
  const method = 'given values';
  const source = 'as given by the user';
  return {
    method,
    source,
    at,
    remarks(frequency) {
      const remarks: string[] = [];
      const lowest = frequencies[0]!;
      const highest = frequencies.at(-1)!;
      if (frequencies.length > 1 && (frequency < lowest || frequency > highest))
        remarks.push('outside the frequencies at which the impedance was given; the nearest value is held');
      const wavelength = SPEED_OF_LIGHT / frequency;
      const likely = gainOf(broadside(frequency) ** 2, linear(frequencies, resistances, frequency), wavelength);
      if (likely > GREATEST_LIKELY_GAIN)
        remarks.push('the values given amount to more than 20 dB of gain over isotropic: the resistance must leave out losses');
      return remarks;
    },
    figures(frequency, arrival) {
      const now = at(frequency, arrival);
      const read = { formula: 'read linearly between the given frequencies', source };
      return sourceFigures('aerial', method, now, frequency, {
        resistance: { ...read, terms: [term('f', 'frequency', frequency, 'Hz')] },
        reactance: { ...read, terms: [term('f', 'frequency', frequency, 'Hz')] },
        loss: null,
        effectiveLength: {
          formula: gain === undefined ? 'h = h_0 * element * front-to-back' : 'h = lambda sqrt(G R / (pi eta)) * element * front-to-back',
          terms: [
            term('h_0', 'effective length towards broadside', broadside(frequency), 'm'),
            term('G', 'gain over isotropic, losses in it', gain ?? null, '1'),
            term('R', 'terminal resistance', now.impedance.re, 'ohm'),
            term('F', 'front-to-back factor of amplitude at this bearing', frontToBack(arrival), '1'),
          ],
          source: gain === undefined ? source : 'Balanis, Antenna Theory, 3rd ed., sec. 2.15; pattern: estimate',
          holds: 'the shape of the pattern between front, side and back is an estimate',
        },
      });
    },
  };
}
