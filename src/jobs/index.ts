/** Long work for every face: plain data in, plain data out, in a thread of its own or not. */
import { GivenError } from '#engine';
import type { Revivers } from '#rpc';
import type { jobs } from './table.ts';

export type JobTable = typeof jobs;
export type { AdoptGiven } from './adopt.ts';
export type { AdviseGiven } from './advise.ts';
export type { AerialCurves } from './curves/aerial.ts';
export type { DetectorCurves } from './curves/detector.ts';
export type { EarCurves } from './curves/ear.ts';
export type { CurvesGiven } from './curves/given.ts';
export type { PhonesCurves } from './curves/phones.ts';
export type { PlaceCurves, StationField } from './curves/place.ts';
export type { PlainShape } from './curves/plain-shape.ts';
export type { SlopeCurves, SlopeGiven, SlopePoint, ToneWave } from './curves/slope.ts';
export type { TankCurves } from './curves/tank.ts';
export type { WhatIf } from './curves/what-if.ts';
export type { DialGiven, DialPicture } from './dial.ts';
export type { Answer, Document, KnownDocument, ReadAhead } from './document.ts';
export type { EvaluateGiven, Glance } from './evaluate.ts';
export type { StationFigures } from './figures.ts';
export type { FindAnswer, FoundSet, FrontSet, Merits } from './find/answer.ts';
export type { FindAsked, FindGiven } from './find/laid-out.ts';
export type { FoundOdds } from './find/odds.ts';
export type { FindPlan, PortionGiven } from './find/search.ts';
export type { ScatterRow, TolerancePlan, ToleranceSlice } from './find/tolerance.ts';
export type { Advice, Advised, Evaluated, LadderRow, Outline, StationOutline, StationResult } from './results.ts';
export type { StageGiven, StageName } from './stage.ts';
export type { Sweep, SweepGiven } from './sweep.ts';
export type { TankBuild } from './tank-build.ts';

/** For `connect`: errors of the engine arrive as what they were. */
export const REVIVERS: Revivers = {
  GivenError: ({ data }) => new GivenError(String(data.path), String(data.given), String(data.why), String(data.mend)),
};
