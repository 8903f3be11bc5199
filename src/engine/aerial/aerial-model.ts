import type { AerialDescription } from './description.ts';
import { dipoleModel } from './dipole.ts';
import { withFeeder } from './feeder.ts';
import { givenValuesModel } from './given-values.ts';
import { loopModel } from './loop.ts';
import type { AerialModel } from './model.ts';
import { whipModel } from './whip.ts';
import { wireToEarthModel } from './wire-to-earth.ts';

/** Any aerial that is not the tuning coil itself. */
export type SeparateAerial = Exclude<AerialDescription, { kind: 'coil' }>;

/**
 * The aerial as a source, by the closed form for its kind, seen through its feeder where it has one.
 *
 * @throws GivenError where the description cannot be
 */
export function aerialModel(description: SeparateAerial): AerialModel {
  const model = bareModel(description);
  return description.feeder ? withFeeder(model, description.feeder) : model;
}

function bareModel(description: SeparateAerial): AerialModel {
  switch (description.kind) {
    case 'electrical':
      return givenValuesModel(description);
    case 'dipole':
      return dipoleModel(description);
    case 'whip':
      return whipModel(description);
    case 'loop':
      return loopModel(description);
    case 'wire-to-earth':
      return wireToEarthModel(description);
  }
}
