import type { Path } from '../json/positions.ts';

/** What the way from one naming to the other depends on. */
export interface NamedWires {
  readonly shape: string;
  /** which element of a beam is fed, counted from 1, and whether it is folded */
  readonly driven?: number | undefined;
  readonly folded?: boolean | undefined;
}

/**
 * Where a file gives what the engine complains of.
 *
 * The engine names things by shape (`aerial.shape.rod.length`) and, once a shape has become wires, by wire (`aerial.wires[2]`);
 * the file has a maker's words (`aerial.length`, `aerial.elements[2]`).
 */
export function wiresPath(path: Path, aerial: NamedWires): Path {
  const [section, first, ...rest] = path;
  if (section !== 'aerial') return path;
  if (first === 'shape') return ['aerial', ...ofShape(rest, aerial)];
  if (first !== 'wires' && first !== 'feed' && first !== 'loads') return path;
  if (aerial.shape === 'free-list') return path.map((key, i) => (i > 2 && typeof key === 'string' ? (AXES[key] ?? key) : key));
  return ['aerial', ...(first === 'wires' && typeof rest[0] === 'number' ? ofWire(rest[0], aerial) : [])];
}

const AXES: Readonly<Record<string, number>> = { x: 0, y: 1, z: 2 };
/** Wires of a folded element. */
const FOLDED = 5;

function ofShape(keys: Path, aerial: NamedWires): Path {
  const [first, second] = keys;
  if (aerial.shape === 'rod' && first === 'rod') return keys.slice(1);
  if (aerial.shape !== 'beam') return keys;
  if (keys.at(-1) === 'diameter') return ['diameter'];
  const fed = (aerial.driven ?? 2) - 1;
  switch (first) {
    case 'reflector':
      return ['elements', 0, second === 'behind' ? 'position' : 'length'];
    case 'driven':
      return second === 'element' ? ['drivenElement', ...keys.slice(2)] : ['elements', fed, 'length'];
    case 'directors':
      return ['elements', fed + 1 + Number(second), keys[2] === 'ahead' ? 'position' : 'length'];
    default:
      return keys;
  }
}

/** Wires stand in the order in which the shapes of the engine list them. */
function ofWire(wire: number, aerial: NamedWires): Path {
  if (aerial.shape === 'rod') return wire === 0 ? [] : ['against'];
  if (aerial.shape !== 'beam') return [];
  const fed = (aerial.driven ?? 2) - 1;
  const ownWires = aerial.folded ? FOLDED : 1;
  if (wire < ownWires) return ['elements', fed];
  const other = wire - ownWires;
  return ['elements', other < fed ? other : other + 1];
}
