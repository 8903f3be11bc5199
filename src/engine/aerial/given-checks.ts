import { GivenError } from '../given-error.ts';

/** A length, diameter and the like that must be above zero. */
export function mustBePositive(path: string, value: number, unit: string): void {
  if (!(value > 0 && Number.isFinite(value)))
    throw new GivenError(path, `${value} ${unit}`, 'it must be above zero', `Give it in ${unit}.`);
}

/** A loss or resistance that may be zero but not below. */
export function mustNotBeNegative(path: string, value: number, unit: string): void {
  if (!(value >= 0 && Number.isFinite(value)))
    throw new GivenError(path, `${value} ${unit}`, 'it cannot be below zero', 'Give zero or more.');
}

/** An angle, reactance or level: any number, but a number. */
export function mustBeNumber(path: string, value: number, unit: string): void {
  if (!Number.isFinite(value)) throw new GivenError(path, `${value} ${unit}`, 'it is not a number', `Give it in ${unit}.`);
}

/** A conductor as long as it is thick is no wire: the thin-wire formulas would take the logarithm of less than one. */
export function mustBeThin(path: string, length: number, diameter: number): void {
  mustBePositive(`${path}.length`, length, 'm');
  mustBePositive(`${path}.diameter`, diameter, 'm');
  if (length < 5 * diameter)
    throw new GivenError(
      `${path}.diameter`,
      `${diameter} m`,
      `a wire ${length} m long cannot be treated as thin at that diameter`,
      'Give a diameter below a fifth of the length.',
    );
}
