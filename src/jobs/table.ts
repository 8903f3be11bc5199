import { adopt } from './adopt.ts';
import { aerialCurves } from './curves/aerial.ts';
import { detectorCurves } from './curves/detector.ts';
import { earCurves } from './curves/ear.ts';
import { phonesCurves } from './curves/phones.ts';
import { placeCurves } from './curves/place.ts';
import { slopeCurves } from './curves/slope.ts';
import { tankCurves } from './curves/tank.ts';
import { dial } from './dial.ts';
import { advise, evaluate, outline } from './evaluate.ts';
import { stage } from './stage.ts';
import { numbers, sweep } from './sweep.ts';
import { tankBuild } from './tank-build.ts';

/** Every job there is, for the entries of the threads that serve them. */
export const jobs = {
  outline,
  evaluate,
  advise,
  adopt,
  dial,
  stage,
  tankBuild,
  sweep,
  numbers,
  placeCurves,
  aerialCurves,
  tankCurves,
  slopeCurves,
  detectorCurves,
  phonesCurves,
  earCurves,
};
