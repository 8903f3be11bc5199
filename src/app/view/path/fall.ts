/** The stages of the path, in order. */
export const STAGES = ['place', 'aerial', 'tank', 'detector', 'phones', 'ear'] as const;
export type Stage = (typeof STAGES)[number];

/** A rung as the picture needs it: what stands there, and what the way to it took. */
export interface Step {
  readonly stage: Stage;
  readonly label: string;
  /** the level as text, `6.38 µW (-22.0 dBm)` */
  readonly level: string;
  /** [dB], positive for a loss; null where loss has no meaning */
  readonly cost: number | null;
  readonly costliest: boolean;
}

/** One drop of the wire. */
export interface Drop {
  readonly step: Step;
  /** lost before and after it [dB] */
  readonly from: number;
  readonly to: number;
}

/** A stage on the wire. */
export interface Post {
  readonly stage: Stage;
  readonly drops: readonly Drop[];
  /** lost once it is passed [dB] */
  readonly lost: number;
  /** level at its end; null where nothing is known of it */
  readonly level: string | null;
}

/** The path as a fall: how much each stage takes, and how far above silence it ends. */
export interface Fall {
  readonly posts: readonly Post[];
  /** lost from the aerial to the ear [dB] */
  readonly lost: number;
  /** the best band of speech over what hides it [dB], negative where it is hidden; null where the dial does not reach the station */
  readonly left: number | null;
}

/** A drop too small to be drawn [dB]. */
const LEAST = 0.05;

export function fallOf(steps: readonly Step[], left: number | null): Fall {
  let lost = 0;
  const posts = STAGES.map((stage): Post => {
    const own = steps.filter((s) => s.stage === stage);
    const drops = own.flatMap((step): Drop[] => {
      if (step.cost === null || Math.abs(step.cost) < LEAST) return [];
      const from = lost;
      lost += step.cost;
      return [{ step, from, to: lost }];
    });
    return { stage, drops, lost, level: own.at(-1)?.level ?? null };
  });
  return { posts, lost, left };
}

/** Ends of the scale the picture needs [dB lost]: from the highest point of the wire to whatever lies lowest, wire or silence. */
export function scaleOf({ posts, lost, left }: Fall): { readonly top: number; readonly bottom: number; readonly silence: number } {
  const silence = lost + (left ?? 0);
  const ends = posts.flatMap((p) => [p.lost, ...p.drops.flatMap((d) => [d.from, d.to])]);
  const top = Math.min(0, ...ends);
  return { top, bottom: Math.max(top + 10, silence, ...ends), silence };
}
