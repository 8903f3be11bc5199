/** Jobs of a search through a drawer: one file of the built thread, since a thread that searches needs all of them. */
export { findAnswer, findSet } from './answer.ts';
export { drawerOfSet } from './drawer-of-set.ts';
export { findOdds } from './odds.ts';
export { findPlan, findPortion } from './search.ts';
export { tolerancePlan, toleranceSlice } from './tolerance.ts';
