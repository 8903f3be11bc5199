import { GivenError } from '../../given-error.ts';
import { between, closest, dot, minus, type Point, separation } from './point.ts';
import type { Ground, Load, Wire } from './structure.ts';

/** More wires than this are surely a mistake, and the checks of every pair would be slow. */
const MOST_WIRES = 500;

const metres = (v: number) => `${Number(v.toPrecision(4))} m`;

/**
 * Refuses wires that cannot be: no length, no thickness, thicker than long, running inside each other, below the ground.
 *
 * @throws GivenError with the path of the wire
 */
export function checkWires(wires: readonly Wire[], ground: Ground, path: string): void {
  if (wires.length === 0) throw new GivenError(path, 'empty', 'an aerial has at least one wire', 'List its wires.');
  if (wires.length > MOST_WIRES)
    throw new GivenError(path, `${wires.length} wires`, `at most ${MOST_WIRES} are taken`, 'Leave out what carries little current.');
  wires.forEach((w, i) => {
    checkWire(w, ground, `${path}[${i}]`);
  });
  for (let i = 0; i < wires.length; i++) for (let j = 0; j < i; j++) checkApart(wires[i]!, wires[j]!, i, j, path);
}

function checkWire(w: Wire, ground: Ground, path: string): void {
  for (const end of ['from', 'to'] as const)
    for (const axis of ['x', 'y', 'z'] as const)
      if (!Number.isFinite(w[end][axis]))
        throw new GivenError(`${path}.${end}.${axis}`, `${w[end][axis]}`, 'a coordinate is a number of metres', 'Give a number.');
  if (!(w.diameter > 0) || !Number.isFinite(w.diameter))
    throw new GivenError(`${path}.diameter`, `${w.diameter} m`, 'a wire has a thickness', 'Give a diameter above zero.');
  const length = separation(w.from, w.to);
  if (!(length > w.diameter))
    throw new GivenError(
      path,
      `${metres(length)} long`,
      `a wire ${metres(w.diameter)} thick has to be longer than that`,
      'Lengthen it or leave it out.',
    );
  if (ground.kind === 'free-space') return;
  const low = Math.min(w.from.z, w.to.z);
  if (low < -w.diameter / 2)
    throw new GivenError(
      path,
      `at ${metres(low)}`,
      'the ground is at height 0 and nothing of the aerial can be below it',
      'Raise the wire.',
    );
  if (Math.max(w.from.z, w.to.z) <= w.diameter / 2)
    throw new GivenError(
      path,
      'flat on the ground',
      'a wire in a conducting plane carries no current of its own',
      'Raise it or leave it out.',
    );
}

/** Parallel or nearly parallel wires must not run inside each other. */
function checkApart(a: Wire, b: Wire, i: number, j: number, path: string): void {
  const touch = (a.diameter + b.diameter) / 2;
  if (closest(a.from, a.to, b.from, b.to).distance >= touch) return;
  const shared = overlap(a, b, touch);
  // where two wires meet at an angle they overlap for touch/sin(angle) from the joint
  if (shared > 4 * touch && shared > Math.min(separation(a.from, a.to), separation(b.from, b.to)) / 4)
    throw new GivenError(
      `${path}[${i}]`,
      `inside wire ${j} for ${metres(shared)}`,
      `two wires whose thickness together is ${metres(2 * touch)} cannot run nearer than ${metres(touch)}`,
      'Move one of them, or give the two as one wire.',
    );
}

/** Length of a that runs within `touch` of b, by looking at 64 places along it. */
function overlap(a: Wire, b: Wire, touch: number): number {
  const steps = 64;
  let inside = 0;
  for (let i = 0; i < steps; i++) {
    if (distanceToWire(between(a.from, a.to, (i + 0.5) / steps), b) < touch) inside++;
  }
  return (inside / steps) * separation(a.from, a.to);
}

/** Distance of a point from a wire's axis, past whose ends it counts as away. */
function distanceToWire(p: Point, w: Wire): number {
  const along = minus(w.to, w.from);
  const t = dot(minus(p, w.from), along) / dot(along, along);
  if (t < 0 || t > 1) return Number.POSITIVE_INFINITY;
  return separation(p, between(w.from, w.to, t));
}

/** Refuses loads that no part can be. */
export function checkLoads(loads: readonly Load[], path: string): void {
  loads.forEach((load, i) => {
    const parts =
      load.kind === 'impedance'
        ? { resistance: load.resistance }
        : { resistance: load.resistance, inductance: load.inductance, capacitance: load.capacitance };
    for (const [name, value] of Object.entries(parts))
      if (value !== undefined && !(value >= 0 && Number.isFinite(value)))
        throw new GivenError(`${path}[${i}].${name}`, `${value}`, 'a passive part has no negative value', 'Give zero or more.');
    if (load.kind === 'impedance' && !Number.isFinite(load.reactance))
      throw new GivenError(`${path}[${i}].reactance`, `${load.reactance}`, 'a reactance is a number of ohms', 'Give a number.');
    if (load.kind === 'parallel' && load.resistance === 0)
      throw new GivenError(`${path}[${i}].resistance`, '0 ohm', 'nothing in parallel with a short circuit matters', 'Leave the load out.');
    if (load.kind === 'parallel' && load.inductance === 0)
      throw new GivenError(`${path}[${i}].inductance`, '0 H', 'nothing in parallel with a short circuit matters', 'Leave the load out.');
    if (load.kind !== 'impedance' && load.capacitance === 0)
      throw new GivenError(
        `${path}[${i}].capacitance`,
        '0 F',
        'a capacitor of nothing is a break in the wire',
        'Leave it out or give its value.',
      );
  });
}
