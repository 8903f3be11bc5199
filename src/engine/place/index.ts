export type * from './description.ts';
export type * from './received-field.ts';
