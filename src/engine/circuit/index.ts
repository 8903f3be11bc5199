export type * from './elements.ts';
export { EARTH } from './elements.ts';
export { Multiport } from './multiport.ts';
export { Network, Solution } from './network.ts';
export { poles } from './poles.ts';
export { type ElementPower, powers } from './power.ts';
export { drawTogether } from './reduce.ts';
