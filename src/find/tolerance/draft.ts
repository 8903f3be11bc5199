import type { Listener, SetDescription } from '#engine';

/** A set as it was built, where it came to stand, and who came to listen: what a scatter changes. */
export interface Draft {
  readonly set: SetDescription;
  readonly listener: Listener;
  /** by how much each station of the place arrives above its median [dB] */
  readonly fields: readonly number[];
}

/** One thing that comes out differently each time a set is built or heard. */
export interface Scatter {
  /** `tank.coil.pitch` */
  readonly key: string;
  /** `pitch of the coil` */
  readonly label: string;
  /** how far, in words, and where that is from */
  readonly extent: string;
  /** true for what a builder's hand or a part decides; false for the place and the ear */
  readonly ofTheSet: boolean;
  /** the draft with this thing z standard deviations from what was meant; z is normal */
  apply(draft: Draft, z: number): Draft;
}

export type Coil = SetDescription['tank']['coil'];
export type Geometry = Extract<Coil, { kind: 'geometry' }>;

export function withTank(draft: Draft, change: Partial<SetDescription['tank']>): Draft {
  return { ...draft, set: { ...draft.set, tank: { ...draft.set.tank, ...change } } };
}

/** Draft with a coil given by geometry changed; any other coil stays. */
export function withCoil(draft: Draft, change: (coil: Geometry) => Partial<Geometry>): Draft {
  const { coil } = draft.set.tank;
  return coil.kind === 'geometry' ? withTank(draft, { coil: { ...coil, ...change(coil) } }) : draft;
}
