import type { AerialDescription } from './description.ts';

/** A rod on the set, by what the set offers as the other half. */
export type Whip = Extract<AerialDescription, { kind: 'whip' }>;
export type Counterpoise = Whip['counterpoise'];
