import { mustBePositive, mustBeThin, mustNotBeNegative } from './given-checks.ts';
import type { AerialModel } from './model.ts';
import { uprightModel } from './upright.ts';
import type { Whip } from './whip-description.ts';
import { whipOnPlane } from './whip-on-plane.ts';
import { whipOverDropWire } from './whip-over-drop-wire.ts';
import { whipOverEarthWire } from './whip-over-earth-wire.ts';
import { whipOverSet } from './whip-over-set.ts';

/** Upright rod against its counterpoise. */
export function whipModel(whip: Whip): AerialModel {
  mustBeThin('aerial', whip.length, whip.diameter);
  const { counterpoise } = whip;
  switch (counterpoise.kind) {
    case 'plane':
      return uprightModel(whipOnPlane(whip));
    case 'drop-wire':
      mustBeThin('aerial.counterpoise', counterpoise.length, counterpoise.diameter);
      return uprightModel(whipOverDropWire(whip, counterpoise));
    case 'set':
      mustBePositive('aerial.counterpoise.size', counterpoise.size, 'm');
      return uprightModel(whipOverSet(whip, counterpoise.size));
    case 'earth-wire':
      mustBeThin('aerial.counterpoise', counterpoise.length, counterpoise.diameter);
      mustNotBeNegative('aerial.counterpoise.earthResistance', counterpoise.earthResistance, 'ohm');
      return uprightModel(whipOverEarthWire(whip, counterpoise));
  }
}
