export type * from './description.ts';
export * from './model.ts';
