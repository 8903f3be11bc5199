export type * from './description.ts';
export type * from './model.ts';
