import type { AerialDescription } from './description.ts';
import { dipoleModel } from './dipole.ts';
import { withFeeder } from './feeder.ts';
import { givenValuesModel } from './given-values.ts';
import { loopModel } from './loop.ts';
import type { AerialModel } from './model.ts';
import { whipModel } from './whip.ts';
import { wireToEarthModel } from './wire-to-earth.ts';
import { wireAerial } from './wires/index.ts';

/** Any aerial that is not the tuning coil itself. */
export type SeparateAerial = Exclude<AerialDescription, { kind: 'coil' }>;

/**
 * The aerial as a source, by the closed form for its kind or from its wires, seen through its feeder where it has one.
 *
 * @throws GivenError where the description cannot be
 */
export function aerialModel(description: SeparateAerial): AerialModel {
  const known = models.get(description);
  if (known) return known;
  const bare = bareModel(description);
  const model = description.feeder ? withFeeder(bare, description.feeder) : bare;
  models.set(description, model);
  return model;
}

/** Models by the very description: a search that changes the rest of the set keeps the aerial, whose wires may have cost a second to solve. */
const models = new WeakMap<SeparateAerial, AerialModel>();

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
    case 'wires':
      return wireAerial(description);
  }
}
