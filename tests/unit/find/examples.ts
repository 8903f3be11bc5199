import { readFileSync } from 'node:fs';
import type { AerialDescription, Listener, Place, SetDescription } from '#engine';
import { readSetFile } from '#set-file';

/** An example, read as the command line reads it. */
export interface Example {
  readonly place: Place;
  readonly set: SetDescription;
  readonly listener: Listener;
}

/** @param aerial - in place of the example's own, as a file gives it */
export function example(name: string, aerial?: unknown): Example {
  const text = JSON.parse(readFileSync(`examples/${name}`, 'utf8'));
  const read = readSetFile(JSON.stringify({ ...text, ...(aerial !== undefined && { aerial }) }), {
    read: (file) => readFileSync(`examples/${file}`, 'utf8'),
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems, null, 1));
  const { place, aerial: described, tank, detector, phones, ear, programme } = read.value;
  return { place: place!, set: { aerial: described, tank, detector, phones }, listener: { ear, programme } };
}

export type Wires = Extract<AerialDescription, { kind: 'wires' }>;
