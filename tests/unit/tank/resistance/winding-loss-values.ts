import { readFileSync } from 'node:fs';

/** Values of methods that share nothing with the engine's; how they were made: tests/reference/winding-loss/make.py. */
export interface WindingLossValues {
  readonly ratios: readonly { n: number; z: readonly [number, number]; ratio: readonly [number, number] }[];
  readonly surface: readonly { count: number; wireOverPitch: number; curvature: number; factor: number; reactance: number }[];
  readonly filaments: readonly {
    count: number;
    wireOverPitch: number;
    curvature: number;
    radiusInSkinDepths: number;
    factor: number;
    spread: number;
  }[];
}

export const windingLoss = JSON.parse(
  readFileSync(new URL('../../../reference/winding-loss/values.json', import.meta.url), 'utf8'),
) as WindingLossValues;
