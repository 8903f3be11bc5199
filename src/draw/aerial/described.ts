import { type WireShape, type WiresDescription, wireStructure } from '#engine';
import { type Body, contentOf } from './content.ts';
import { type Cut, cuttingList } from './cutting-list.ts';
import { type AerialDrawingOptions, drawAerial } from './draw-aerial.ts';
import { lengthText } from './length-text.ts';

/** Draws an aerial a maker has described, with a title and with a metal case shown as one. */
export function drawDescribedAerial(description: WiresDescription, options: AerialDrawingOptions = {}): string {
  const { shape } = description;
  return drawAerial(wireStructure(description), { title: aerialTitle(shape), bodies: bodiesOf(shape), ...options });
}

/** What to cut for it, the longest first. */
export function describedCuts(description: WiresDescription): readonly Cut[] {
  return cuttingList(contentOf(wireStructure(description), bodiesOf(description.shape)).conductors);
}

function bodiesOf(shape: WireShape): readonly Body[] {
  if (shape.kind !== 'rod' || shape.against.kind !== 'box') return [];
  const { width, depth, height } = shape.against;
  const edges = 4 * 5;
  return [
    {
      wires: Array.from({ length: edges }, (_, i) => i + 1),
      label: `case ${lengthText(width)} wide, ${lengthText(depth)} deep, ${lengthText(height)} high`,
    },
  ];
}

/** What the trade calls it. */
export function aerialTitle(shape: WireShape): string {
  switch (shape.kind) {
    case 'rod': {
      const against = {
        'drop-wire': 'a drop wire',
        box: 'the case of the set',
        radials: 'radials',
        'earth-wire': 'a wire to earth',
      } as const;
      return `Rod with ${against[shape.against.kind]}`;
    }
    case 'dipole':
      return shape.includedAngle > Math.PI - 1e-6 ? 'Dipole' : shape.bend === 'down' ? 'Inverted V' : 'V dipole';
    case 'folded-dipole':
      return 'Folded dipole';
    case 'beam':
      return `Beam of ${shape.directors.length + (shape.reflector ? 2 : 1)} elements`;
    case 'round-loop':
      return shape.turns === 1 ? 'Round loop' : `Round loop of ${shape.turns} turns`;
    case 'square-loop':
      return 'Square loop';
    case 'free-list':
      return 'Aerial of given wires';
  }
}
