/** Jobs that nothing needs before a person asks for them: they share one file of the built thread. */
export { adopt } from './adopt.ts';
export { aerialCurves } from './curves/aerial.ts';
export { detectorCurves } from './curves/detector.ts';
export { earCurves } from './curves/ear.ts';
export { phonesCurves } from './curves/phones.ts';
export { placeCurves } from './curves/place.ts';
export { slopeCurves } from './curves/slope.ts';
export { tankCurves } from './curves/tank.ts';
export { figures } from './figures.ts';
export { stage } from './stage.ts';
export { numbers, sweep } from './sweep.ts';
export { tankBuild } from './tank-build.ts';
