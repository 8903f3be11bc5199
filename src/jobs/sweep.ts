import type { Figure } from '#engine';
import type { JobContext } from '#rpc';
import { type StandingNumber, variable, variables } from '#set-file';
import { stationFigures } from '#tell';
import type { DimensionName } from '#units';
import { offBench, onBench } from './bench.ts';
import type { Answer, Document } from './document.ts';

export interface SweepGiven {
  readonly document: Document;
  readonly station: number;
  /** what is varied: `tank.coil.turns` */
  readonly path: string;
  /** ends, in SI units */
  readonly from: number;
  readonly to: number;
  readonly steps: number;
  /** in equal ratios; both ends on one side of zero */
  readonly log: boolean;
}

/** Figures of one station over one number of its set. */
export interface Sweep {
  readonly dimension: DimensionName;
  /** null where the set with that value cannot be, or the dial does not reach the station */
  readonly points: readonly { readonly value: number; readonly figures: Readonly<Record<string, number | null>> | null }[];
  /** what there is to look at: name, label, unit */
  readonly figures: readonly Pick<Figure, 'name' | 'label' | 'unit'>[];
}

/** One number of a set over a range; every point is the whole set worked out anew, the dial set afresh. Null where no number stands at the path. */
export function sweep(given: SweepGiven, context: JobContext): Promise<Answer<Sweep | null>> {
  const { document, station, path, from, to, steps, log } = given;
  return onBench(document, async (bench) => {
    bench.stations(station);
    const varied = variable(bench.file, path);
    if (!varied) return null;
    const known = new Map<string, Pick<Figure, 'name' | 'label' | 'unit'>>();
    const points: Sweep['points'][number][] = [];
    for (let k = 0; k < steps; k++) {
      await context.step(k / steps);
      const t = steps > 1 ? k / (steps - 1) : 0;
      const value = log ? from * (to / from) ** t : from + t * (to - from);
      const answer = await offBench({ text: varied.with(value) }, (changed) => changed.report(station));
      const figures = answer.ok && answer.value.heard ? stationFigures(answer.value) : null;
      for (const { name, label, unit } of figures ?? []) known.set(name, { name, label, unit });
      points.push({ value, figures: figures && Object.fromEntries(figures.map((f) => [f.name, f.value])) });
    }
    return { dimension: varied.dimension, points, figures: [...known.values()] };
  });
}

/** The numbers of a document that can be varied, each as it stands. */
export function numbers(document: Document): Promise<Answer<readonly StandingNumber[]>> {
  return onBench(document, ({ file }) => variables(file));
}
