/** A document with its past, and with the future that was undone. */
export interface History<T> {
  readonly past: readonly T[];
  readonly now: T;
  readonly future: readonly T[];
  /** the drag of a slider that the last step belongs to; a further edit of the same drag is no step of its own */
  readonly drag: string | null;
}

/** Steps that can be undone. */
const MOST_STEPS = 200;

export const beginning = <T>(now: T): History<T> => ({ past: [], now, future: [], drag: null });

/**
 * The document edited; what was undone is given up.
 *
 * @param drag - name of the drag the edit belongs to, the same from pressing to letting go; null for an edit by itself
 */
export function edited<T>(history: History<T>, now: T, drag: string | null = null): History<T> {
  if (now === history.now) return history;
  const goesOn = drag !== null && drag === history.drag;
  return { past: goesOn ? history.past : [...history.past, history.now].slice(-MOST_STEPS), now, future: [], drag };
}

/** The hand has let go: the next edit is a step of its own, even of the same slider. */
export const letGo = <T>(history: History<T>): History<T> => ({ ...history, drag: null });

/** The same where there is nothing to undo. */
export function undone<T>(history: History<T>): History<T> {
  const { past, now, future } = history;
  if (past.length === 0) return history;
  return { past: past.slice(0, -1), now: past.at(-1)!, future: [now, ...future], drag: null };
}

/** The same where there is nothing to redo. */
export function redone<T>(history: History<T>): History<T> {
  const { past, now, future } = history;
  if (future.length === 0) return history;
  return { past: [...past, now], now: future[0]!, future: future.slice(1), drag: null };
}
