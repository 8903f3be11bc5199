/** What a person says of an aerial that is to be computed from its wires. SI units, angles in radians. */

import type { Orientation } from '../orientation.ts';
import type { Ground, Load, OnWire, Wire, WireMetal } from './structure.ts';

/** A round conductor. Lengths in metres. */
export interface Conductor {
  readonly length: number;
  readonly diameter: number;
  readonly metal: WireMetal;
}

/** What the rod works against. */
export type Counterpart =
  /** a wire hanging straight down from the set */
  | ({ readonly kind: 'drop-wire' } & Conductor)
  /** the metal of the set itself: case, ground plane, battery of capacitors; `width` across, `depth`, `height` [m] */
  | { readonly kind: 'box'; readonly width: number; readonly depth: number; readonly height: number; readonly metal: WireMetal }
  /** wires spread evenly from the foot of the rod, `droop` below the level [rad] */
  | ({ readonly kind: 'radials'; readonly count: number; readonly droop: number } & Conductor)
  /** a wire from the set to an earth rod: straight down, or sloping north where it is longer than the set is high. The earth is a perfect plane behind `earthResistance` [ohm] */
  | ({ readonly kind: 'earth-wire'; readonly earthResistance: number } & Conductor);

/** A straight or folded element fed in the middle. */
export type Driven = { readonly kind: 'straight' } | { readonly kind: 'folded'; readonly spacing: number };

export type WireShape =
  | {
      /** a rod on the set, upright or leaning */
      readonly kind: 'rod';
      readonly rod: Conductor;
      /** away from upright [rad], towards the bearing [rad] */
      readonly lean: { readonly angle: number; readonly bearing: number };
      readonly against: Counterpart;
    }
  | {
      /** fed in the middle: straight, or its halves bent to an angle between them */
      readonly kind: 'dipole';
      /** both halves together [m] */
      readonly length: number;
      readonly diameter: number;
      readonly metal: WireMetal;
      readonly orientation: Orientation;
      /** angle between the halves [rad], pi for straight */
      readonly includedAngle: number;
      /** where the tips go when bent: `forward` to the broadside (a vertical dipole: north), `down` as an inverted V */
      readonly bend: 'forward' | 'down';
      /** a horizontal one: its right-hand tip is raised, the other lowered, by this angle [rad] */
      readonly slope: number;
    }
  | {
      /** two conductors side by side joined at both ends, one fed in the middle */
      readonly kind: 'folded-dipole';
      readonly length: number;
      readonly diameter: number;
      /** of the conductor that is not fed; as `diameter` where all is bent of one rod */
      readonly secondDiameter: number;
      /** between the axes [m]; the second lies above the first, or behind a vertical one */
      readonly spacing: number;
      readonly metal: WireMetal;
      readonly orientation: Orientation;
    }
  | {
      /** reflector, driven element, directors on a boom that insulates them */
      readonly kind: 'beam';
      /** [m]; `behind` the driven element; null for a beam without one */
      readonly reflector: { readonly length: number; readonly behind: number } | null;
      readonly driven: { readonly length: number; readonly element: Driven };
      /** [m]; each `ahead` of the driven element */
      readonly directors: readonly { readonly length: number; readonly ahead: number }[];
      /** of all elements */
      readonly diameter: number;
      readonly metal: WireMetal;
      /** elements upright or level */
      readonly polarisation: 'vertical' | 'horizontal';
      /** bearing the boom points to [rad] */
      readonly bearing: number;
    }
  | {
      /** a loop of one or several turns, as a polygon of the same area as the circle */
      readonly kind: 'round-loop';
      readonly diameter: number;
      readonly turns: number;
      /** along the axis [m]; 0 for one turn */
      readonly windingLength: number;
      readonly wireDiameter: number;
      readonly metal: WireMetal;
      /** straight pieces to a turn */
      readonly sides: number;
      /** upright, its plane along a bearing [rad], fed at the bottom; or lying flat, fed on the south */
      readonly axis: { readonly kind: 'horizontal'; readonly plane: number } | { readonly kind: 'vertical' };
    }
  | {
      /** an upright square loop, a wavelength round as a rule, broadside to a bearing */
      readonly kind: 'square-loop';
      /** [m] */
      readonly side: number;
      readonly diameter: number;
      readonly metal: WireMetal;
      readonly bearing: number;
      /** fed in the middle of the bottom side (hears horizontal fields) or of the left-hand side, seen from behind (vertical) */
      readonly fedAt: 'bottom' | 'side';
    }
  | {
      /** any wires: x east, y north, z up [m], z from the ground */
      readonly kind: 'free-list';
      readonly wires: readonly Wire[];
      readonly feed: OnWire;
      readonly loads: readonly Load[];
    };

/** An aerial given by its wires. */
export interface WiresDescription {
  readonly kind: 'wires';
  readonly shape: WireShape;
  /** of the feed above the ground [m]; a free list has its own heights */
  readonly height: number;
  readonly ground: Ground;
  /** forces the number of segments; left out, it is chosen */
  readonly segments?: number;
}
