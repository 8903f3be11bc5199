import { readFileSync } from 'node:fs';

/** Values of tests/reference/tank/values.json; how each was made stands at the head of make.py beside it. */
export interface TankReference {
  readonly elliptic: readonly { m: number; complement: number; k: number; e: number; half: number }[];
  readonly mutual: readonly { r1: number; r2: number; z: number; value: number }[];
  readonly field: readonly { r: number; z: number; radial: number; axial: number }[];
  readonly filaments: readonly { l1: number; l2: number; gap: number; spacing: number; value: number }[];
  readonly crowded: readonly Coil[];
  readonly helix: readonly { turns: number; diameter: number; wire: number; pitch: number; lead: number; winding: number; leads: number }[];
  readonly parts: readonly { turns: number; diameter: number; wire: number; pitch: number; closed: number }[];
  readonly charges: readonly Coil[];
  readonly across: readonly { x: number; share: number }[];
}

interface Coil {
  readonly turns: number;
  readonly diameter: number;
  readonly wire: number;
  readonly pitch: number;
  readonly value: number;
}

export const values = JSON.parse(readFileSync(new URL('../../reference/tank/values.json', import.meta.url), 'utf8')) as TankReference;
