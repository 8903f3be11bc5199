export type * from './elements.ts';
export { EARTH } from './elements.ts';
