import { GivenError } from '../../given-error.ts';
import { mustBeNumber, mustNotBeNegative } from '../given-checks.ts';
import type { WiresDescription } from './description.ts';
import type { Point } from './point.ts';
import { beam } from './shapes/beam.ts';
import { dipole, foldedDipole } from './shapes/dipole.ts';
import { roundLoop, squareLoop } from './shapes/loop.ts';
import { rod } from './shapes/rod.ts';
import type { Ground, WireStructure } from './structure.ts';

/**
 * The wires of a described aerial, its feed at (0, 0, height).
 *
 * @throws GivenError where the description cannot be
 */
export function wireStructure(description: WiresDescription): WireStructure {
  const { shape, height, ground } = description;
  checkGround(ground);
  mustBeNumber('aerial.height', height, 'm');
  const feed: Point = { x: 0, y: 0, z: height };
  switch (shape.kind) {
    case 'rod':
      if (shape.against.kind === 'earth-wire' && ground.kind !== 'perfect')
        throw new GivenError(
          'aerial.ground',
          ground.kind,
          'a wire to earth ends in it',
          'Give a perfect ground; the earth resistance stands for the rest.',
        );
      return { ...rod(shape, feed), ground };
    case 'dipole':
      return { ...dipole(shape, feed), ground };
    case 'folded-dipole':
      return { ...foldedDipole(shape, feed), ground };
    case 'beam':
      return { ...beam(shape, feed), ground };
    case 'round-loop':
      return { ...roundLoop(shape, feed), ground };
    case 'square-loop':
      return { ...squareLoop(shape, feed), ground };
    case 'free-list':
      return { wires: shape.wires, feed: shape.feed, loads: shape.loads, ground };
  }
}

function checkGround(ground: Ground): void {
  if (ground.kind !== 'real') return;
  if (!(ground.permittivity >= 1 && Number.isFinite(ground.permittivity)))
    throw new GivenError(
      'aerial.ground.permittivity',
      `${ground.permittivity}`,
      'nothing has less than a vacuum',
      'Give 1 or more; 15 is medium soil.',
    );
  mustNotBeNegative('aerial.ground.conductivity', ground.conductivity, 'S/m');
}
