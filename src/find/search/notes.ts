import { type Aim, BEYOND, type Limits, worth } from './aim.ts';
import type { Design } from './design.ts';
import { signatureOf } from './difference.ts';
import { type FrontPoint, frontPoint, withPoint } from './front.ts';
import type { Space } from './space.ts';
import { better, type Scored } from './state.ts';
import type { Trials } from './trial.ts';

/** Worth of a set that the engine refuses: a number, since a state is written as JSON. */
const REFUSED = -1e9;
/** What is tried in one portion of a search: how many, the best of each combination of parts, the front. */
export class Notes {
  readonly #space: Space;
  readonly #tries: Trials;
  readonly #aim: Aim;
  readonly #limits: Limits;
  trials = 0;
  readonly best: Record<string, Scored> = {};
  front: readonly FrontPoint[] = [];

  constructor(space: Space, trials: Trials, aim: Aim, limits: Limits) {
    this.#space = space;
    this.#tries = trials;
    this.#aim = aim;
    this.#limits = limits;
  }

  note(design: Design): Scored {
    this.trials++;
    const trial = this.#tries.of(design);
    if (!trial) return { design, worth: REFUSED };
    const scored = { design, worth: worth(this.#space, trial, this.#aim, this.#limits) };
    if (scored.worth <= -BEYOND) return scored;
    const signature = signatureOf(this.#space, design);
    this.best[signature] = better(this.best[signature] ?? null, scored)!;
    const point = frontPoint(design, trial);
    if (point) this.front = withPoint(this.front, point);
    return scored;
  }
}
