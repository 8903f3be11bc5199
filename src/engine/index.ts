/** The engine, from mast to ear: pure functions on plain numbers, SI inside. */
export * from './aerial/index.ts';
export * from './chain/index.ts';
export * from './circuit/index.ts';
export * from './constants.ts';
export * from './detector/index.ts';
export * from './ear/index.ts';
export * from './figure.ts';
export * from './given-error.ts';
export * from './listen/index.ts';
export * from './measure/index.ts';
export * from './metals.ts';
export * from './numeric/index.ts';
export * from './phones/index.ts';
export * from './place/index.ts';
export * from './programme/index.ts';
export * from './sound/index.ts';
export * from './tank/index.ts';
