export type { Complex } from './complex.ts';
export * as C from './complex.ts';
export { eigenvalues } from './eigenvalues.ts';
export { gaussLegendre, integrate, type Rule } from './gauss-legendre.ts';
export { interval, linear, linearInLog } from './interpolate.ts';
export * as LU from './lu.ts';
export { brent, goldenMaximum } from './roots.ts';
