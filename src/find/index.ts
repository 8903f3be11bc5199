export { bestByStage, type Improvement, improvements } from './improvements.ts';
export type { Change, Shelf, Situation } from './situation.ts';
