import type { WireShape } from './description.ts';

/** What a maker calls each wire of a shape, in the order in which the shapes list them; several wires of one name are one thing. */
export function wireParts(shape: WireShape): readonly string[] {
  switch (shape.kind) {
    case 'rod':
      return ['rod', ...counterparts(shape.against)];
    case 'dipole':
      return (Math.PI - shape.includedAngle) / 2 < STRAIGHT ? ['dipole'] : ['first half', 'second half'];
    case 'folded-dipole':
      return folded('conductor');
    case 'beam':
      return [
        ...(shape.driven.element.kind === 'straight' ? ['driven element'] : folded('conductor of the driven element')),
        ...(shape.reflector ? ['reflector'] : []),
        ...shape.directors.map((_, i) => `director ${i + 1}`),
      ];
    case 'round-loop':
      return [
        ...Array.from({ length: shape.sides * shape.turns }, (_, i) =>
          shape.turns === 1 ? 'loop' : `turn ${Math.floor(i / shape.sides) + 1}`,
        ),
        ...(shape.turns === 1 ? [] : Array.from({ length: 3 }, () => 'leads')),
      ];
    case 'square-loop':
      return shape.fedAt === 'bottom'
        ? ['bottom side', 'right-hand side', 'top side', 'left-hand side']
        : ['left-hand side', 'top side', 'right-hand side', 'bottom side'];
    case 'free-list':
      return shape.wires.map((_, i) => `wire ${i}`);
  }
}

/** Halves in one line are one wire [rad]. */
const STRAIGHT = 1e-9;
/** A case is a cage of so many wires. */
const CAGE_WIRES = 20;

function counterparts(against: Extract<WireShape, { kind: 'rod' }>['against']): readonly string[] {
  switch (against.kind) {
    case 'drop-wire':
      return ['drop wire'];
    case 'box':
      return Array.from({ length: CAGE_WIRES }, () => "the set's case");
    case 'radials':
      return Array.from({ length: against.count }, (_, i) => `radial ${i + 1}`);
    case 'earth-wire':
      return ['wire to earth'];
  }
}

/** Fed conductor, end piece, two halves of the other, end piece. */
const folded = (what: string): readonly string[] => [`fed ${what}`, 'end pieces', `second ${what}`, `second ${what}`, 'end pieces'];
