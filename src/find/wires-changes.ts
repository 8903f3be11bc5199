import { type AerialDescription, resonantScale, type Station, type WireShape, type WiresDescription } from '#engine';

type Wires = Extract<AerialDescription, { kind: 'wires' }>;

/** What can be done to an aerial of wires itself: its name, what to do, and what it is then. */
export interface WiresChange {
  readonly key: string;
  readonly words: string;
  readonly aerial: AerialDescription;
}

/** A change of length smaller than this is not worth the saw. */
const WORTH_CUTTING = 0.01;
/** Not quite level: a rod clears the edge of its set, or the radials. */
const LEANT_OVER = (70 / 180) * Math.PI;
const metres = (length: number): string => `${length.toFixed(2)} m`;

/**
 * Turning, cutting to resonance, a drop wire in place of the set's case.
 *
 * @param bearing - of the mast [rad]
 */
export function wiresChanges(aerial: Wires, station: Station, bearing: number): readonly WiresChange[] {
  const upright = station.polarisation === 'vertical';
  return [
    ...turned(aerial.shape, upright, bearing).map((c) => ({ key: 'aerial.turn', words: c.words, aerial: { ...aerial, shape: c.shape } })),
    ...cut(aerial, station.frequency),
    ...dropWire(aerial),
  ];
}

function turned(shape: WireShape, upright: boolean, bearing: number): readonly { readonly words: string; readonly shape: WireShape }[] {
  switch (shape.kind) {
    case 'rod': {
      const clear = shape.against.kind === 'drop-wire' || shape.against.kind === 'earth-wire';
      const lean = upright ? { angle: 0, bearing: 0 } : { angle: clear ? Math.PI / 2 : LEANT_OVER, bearing: bearing + Math.PI / 2 };
      return [{ words: upright ? 'stand the rod upright' : 'lean the rod right over, broadside to the mast', shape: { ...shape, lean } }];
    }
    case 'dipole':
    case 'folded-dipole': {
      const orientation = upright ? ({ kind: 'vertical' } as const) : ({ kind: 'horizontal', broadside: bearing } as const);
      const words = upright ? 'stand the aerial upright' : 'lay the aerial level, broadside to the mast';
      return [{ words, shape: shape.kind === 'dipole' ? { ...shape, orientation, slope: 0 } : { ...shape, orientation } }];
    }
    case 'beam': {
      const polarisation = upright ? 'vertical' : 'horizontal';
      const how = polarisation === shape.polarisation ? '' : upright ? ', its elements upright' : ', its elements level';
      return [{ words: `point the beam at the mast${how}`, shape: { ...shape, bearing, polarisation } }];
    }
    case 'round-loop': {
      const axis = upright ? ({ kind: 'horizontal', plane: bearing } as const) : ({ kind: 'vertical' } as const);
      return [{ words: upright ? 'stand the loop upright, its edge to the mast' : 'lay the loop flat', shape: { ...shape, axis } }];
    }
    case 'square-loop': {
      const fedAt = upright ? 'side' : 'bottom';
      return [{ words: `turn the loop broadside to the mast, fed at the ${fedAt}`, shape: { ...shape, bearing, fedAt } }];
    }
    case 'free-list':
      return [];
  }
}

/** Shapes whose length alone sets their resonance, with that length so many times as long, and in words. */
function scaled(shape: WireShape): { readonly to: (scale: number) => WireShape; readonly words: (scale: number) => string } | null {
  switch (shape.kind) {
    case 'dipole':
      return { to: (k) => ({ ...shape, length: k * shape.length }), words: (k) => `cut the dipole to ${metres(k * shape.length)}` };
    case 'folded-dipole':
      return { to: (k) => ({ ...shape, length: k * shape.length }), words: (k) => `cut the folded dipole to ${metres(k * shape.length)}` };
    case 'square-loop':
      return { to: (k) => ({ ...shape, side: k * shape.side }), words: (k) => `make the loop's sides ${metres(k * shape.side)}` };
    case 'rod': {
      const { rod, against } = shape;
      const longer = (k: number) => ({ ...rod, length: k * rod.length });
      if (against.kind === 'earth-wire') return null;
      if (against.kind !== 'drop-wire')
        return { to: (k) => ({ ...shape, rod: longer(k) }), words: (k) => `make the rod ${metres(k * rod.length)} long` };
      return {
        to: (k) => ({ ...shape, rod: longer(k), against: { ...against, length: k * against.length } }),
        words: (k) => `cut the rod to ${metres(k * rod.length)} and the drop wire to ${metres(k * against.length)}`,
      };
    }
    default:
      return null;
  }
}

function cut(aerial: Wires, frequency: number): readonly WiresChange[] {
  const cuttable = scaled(aerial.shape);
  if (!cuttable) return [];
  const { segments: _, ...chosen } = aerial;
  const scale = resonantScale((k): WiresDescription => ({ ...chosen, shape: cuttable.to(k) }), frequency);
  if (scale === null || Math.abs(scale - 1) < WORTH_CUTTING) return [];
  return [{ key: 'aerial.cut', words: `${cuttable.words(scale)} for this station`, aerial: { ...aerial, shape: cuttable.to(scale) } }];
}

function dropWire(aerial: Wires): readonly WiresChange[] {
  const { shape } = aerial;
  if (shape.kind !== 'rod' || shape.against.kind !== 'box') return [];
  const against = { kind: 'drop-wire', length: shape.rod.length, diameter: 1e-3, metal: 'copper' } as const;
  return [{ key: 'aerial.dropWire', words: 'hang a drop wire as long as the rod', aerial: { ...aerial, shape: { ...shape, against } } }];
}
