import type { SlopeCurves, WhatIf } from '#jobs';
import type { Workbench } from '../../model/workbench.ts';

/** What is tried on the slope. The dial is the set's own; deviation and losses are only supposed. */
export interface Trial {
  /** whether anything but the dial is */
  readonly supposed: boolean;
  /** where the hand is now, which the curves follow as fast as they are worked out [rad; Hz or depth; times] */
  readonly angle: number;
  readonly modulation: number;
  readonly losses: number;
  readonly tune: (angle: number) => void;
  readonly modulate: (to: number) => void;
  readonly lose: (times: number) => void;
  /** leaves what is supposed */
  readonly leave: () => void;
}

export const LOSSES = { least: 1 / 16, most: 32 };

/** Ends of what is tried of a station's modulation [Hz or depth]. */
export const modulationEnds = ({ kind, builtModulation }: SlopeCurves): { readonly least: number; readonly most: number } =>
  kind === 'fm' ? { least: 5e3, most: Math.max(200e3, 2 * builtModulation) } : { least: 0.05, most: 1 };

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));

/**
 * @param supposed - what is supposed at present
 * @param suppose - puts something else in its place
 */
export function trialOf(
  bench: Workbench,
  curves: SlopeCurves,
  supposed: WhatIf | undefined,
  suppose: (next: WhatIf | undefined) => void,
): Trial {
  const put = (next: WhatIf): void => suppose(next.losses === undefined && next.modulation === undefined ? undefined : next);
  return {
    supposed: supposed !== undefined,
    angle: bench.hand.value ?? curves.angle,
    modulation: supposed?.modulation ?? curves.builtModulation,
    losses: supposed?.losses ?? 1,
    tune: (angle) => {
      if (Number.isFinite(angle)) bench.hand.value = within(angle, 0, curves.rotation);
    },
    modulate: (to) => {
      if (!Number.isFinite(to)) return;
      const { least, most } = modulationEnds(curves);
      const modulation = within(to, least, most);
      put({ ...supposed, modulation: modulation === curves.builtModulation ? undefined : modulation });
    },
    lose: (times) => {
      if (!Number.isFinite(times)) return;
      const losses = within(times, LOSSES.least, LOSSES.most);
      put({ ...supposed, losses: losses === 1 ? undefined : losses });
    },
    leave: () => suppose(undefined),
  };
}
