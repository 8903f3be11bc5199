import type { JobContext } from '#rpc';
import { dial } from './dial.ts';
import { evaluate, glance, outline } from './evaluate.ts';

/** A job whose code comes when it is first called. */
const later =
  <J extends (given: never, context: JobContext) => Promise<unknown>>(fetch: () => Promise<J>) =>
  async (given: Parameters<J>[0], context: JobContext): Promise<Awaited<ReturnType<J>>> =>
    (await (
      await fetch()
    )(given as never, context)) as Awaited<ReturnType<J>>;

/** Every job there is, for the entries of the threads that serve them; what the first verdict needs is at hand at once. */
export const jobs = {
  outline,
  glance,
  evaluate,
  dial,
  advise: later(() => import('./advise.ts').then((m) => m.advise)),
  adopt: later(() => import('./on-demand.ts').then((m) => m.adopt)),
  figures: later(() => import('./on-demand.ts').then((m) => m.figures)),
  stage: later(() => import('./on-demand.ts').then((m) => m.stage)),
  tankBuild: later(() => import('./on-demand.ts').then((m) => m.tankBuild)),
  sweep: later(() => import('./on-demand.ts').then((m) => m.sweep)),
  numbers: later(() => import('./on-demand.ts').then((m) => m.numbers)),
  placeCurves: later(() => import('./on-demand.ts').then((m) => m.placeCurves)),
  aerialCurves: later(() => import('./on-demand.ts').then((m) => m.aerialCurves)),
  tankCurves: later(() => import('./on-demand.ts').then((m) => m.tankCurves)),
  slopeCurves: later(() => import('./on-demand.ts').then((m) => m.slopeCurves)),
  detectorCurves: later(() => import('./on-demand.ts').then((m) => m.detectorCurves)),
  phonesCurves: later(() => import('./on-demand.ts').then((m) => m.phonesCurves)),
  earCurves: later(() => import('./on-demand.ts').then((m) => m.earCurves)),
  findPlan: later(() => import('./find/on-demand.ts').then((m) => m.findPlan)),
  findPortion: later(() => import('./find/on-demand.ts').then((m) => m.findPortion)),
  findAnswer: later(() => import('./find/on-demand.ts').then((m) => m.findAnswer)),
  findSet: later(() => import('./find/on-demand.ts').then((m) => m.findSet)),
  findOdds: later(() => import('./find/on-demand.ts').then((m) => m.findOdds)),
  tolerancePlan: later(() => import('./find/on-demand.ts').then((m) => m.tolerancePlan)),
  toleranceSlice: later(() => import('./find/on-demand.ts').then((m) => m.toleranceSlice)),
  drawerOfSet: later(() => import('./find/on-demand.ts').then((m) => m.drawerOfSet)),
};
