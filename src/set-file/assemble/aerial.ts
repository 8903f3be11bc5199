import type { AerialDescription } from '#engine';
import type { AerialForm } from '../forms/aerial-form.ts';
import { assembleWires, wiresToForm } from './wires.ts';

type Tap<T> = T extends 'vertical' ? { readonly kind: 'vertical' } : T;

/** `vertical` said in one word. */
function upright<T extends { readonly kind: string } | 'vertical'>(given: T): Tap<T> {
  return (given === 'vertical' ? { kind: 'vertical' } : given) as Tap<T>;
}

/**
 * The aerial for the engine: short forms written out.
 *
 * @param siteHeight - of the place, if the file has one [m]
 */
export function assembleAerial(form: AerialForm, siteHeight: number | undefined): AerialDescription {
  switch (form.kind) {
    case 'electrical': {
      // one resistance for all frequencies: any frequency will do
      const impedance =
        typeof form.impedance === 'number' ? [{ frequency: 100e6, resistance: form.impedance, reactance: 0 }] : form.impedance;
      return { ...form, impedance, orientation: upright(form.orientation) } as AerialDescription;
    }
    case 'dipole':
      return { ...form, orientation: upright(form.orientation) } as AerialDescription;
    case 'whip':
      return { ...form, counterpoise: form.counterpoise === 'plane' ? { kind: 'plane' } : form.counterpoise } as AerialDescription;
    case 'loop':
      // turns one wire apart
      return {
        ...form,
        windingLength: form.windingLength ?? (2 * form.turns - 1) * form.wireDiameter,
        axis: upright(form.axis),
      } as AerialDescription;
    case 'wire-to-earth':
      return form as AerialDescription;
    case 'coil':
      return { ...form, axis: upright(form.axis) } as AerialDescription;
    case 'wires':
      return assembleWires(form, siteHeight);
  }
}

/** The aerial as a file gives it, with nothing left out. */
export function aerialToForm(aerial: AerialDescription): AerialForm {
  return aerial.kind === 'wires' ? wiresToForm(aerial) : (aerial as AerialForm);
}
