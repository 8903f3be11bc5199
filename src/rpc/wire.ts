import type { Fault } from './errors.ts';

/** What goes over the line. The caller numbers its calls; answers bear the number. */
export type ToWorker =
  | { readonly kind: 'call'; readonly id: number; readonly job: string; readonly given: unknown }
  | { readonly kind: 'cancel'; readonly id: number };

export type FromWorker =
  | { readonly kind: 'done'; readonly id: number; readonly result: unknown }
  | { readonly kind: 'failed'; readonly id: number; readonly fault: Fault }
  | { readonly kind: 'progress'; readonly id: number; readonly fraction: number };
