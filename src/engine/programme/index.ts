export type * from './description.ts';
