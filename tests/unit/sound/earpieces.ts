import type { Earpiece } from '#engine';
import { LIBRARY } from '#parts';
import { type DimensionName, readQuantity } from '#units';

const DIMENSION: Readonly<Record<string, DimensionName>> = {
  frequency: 'frequency',
  level: 'soundLevel',
  sensitivitySpread: 'decibels',
  capacitance: 'capacitance',
  leakResistance: 'resistance',
  resistance: 'resistance',
  inductance: 'inductance',
};

/** An earpiece of the library, as the engine takes it. */
export function readEarpiece(name: string): Earpiece {
  return { name, ...(read(LIBRARY.earpieces[name]!.values, '') as object) } as Earpiece;
}

function read(value: unknown, key: string): unknown {
  const dimension = DIMENSION[key];
  if (typeof value === 'string' && dimension) {
    const reading = readQuantity(value, dimension);
    if (!reading.ok) throw new Error(`${key}: ${reading.given}: ${reading.why}`);
    return reading.value;
  }
  if (Array.isArray(value)) return value.map((v) => read(v, key));
  if (typeof value === 'object' && value !== null) return Object.fromEntries(Object.entries(value).map(([k, v]) => [k, read(v, k)]));
  return value;
}
