/** The work was no longer wanted: by its caller, or because a later call took its place. */
export class Cancelled extends Error {
  override readonly name = 'AbortError';
  constructor(why = 'cancelled') {
    super(why);
  }
}

/** The thread ended with work in hand. The next call starts another. */
export class WorkerDied extends Error {
  override readonly name = 'WorkerDied';
  constructor(reason: string) {
    super(`the worker ended: ${reason}`);
  }
}

/** An error of the other thread, as data. */
export interface Fault {
  readonly name: string;
  readonly message: string;
  readonly stack?: string;
  /** what the error carried beside its words */
  readonly data: Readonly<Record<string, unknown>>;
}

/** Makes errors of a class again from their data, by the name of the class. */
export type Revivers = Readonly<Record<string, (fault: Fault) => Error>>;

export function faultOf(e: unknown): Fault {
  if (!(e instanceof Error)) return { name: 'Error', message: String(e), data: {} };
  const data = Object.fromEntries(Object.entries(e).filter(([key, value]) => key !== 'name' && isPlain(value)));
  return { name: e.name, message: e.message, ...(e.stack === undefined ? {} : { stack: e.stack }), data };
}

/** Functions and the like cannot cross; that an error carries one must not hide the error. */
function isPlain(value: unknown): boolean {
  if (Array.isArray(value)) return value.every(isPlain);
  if (typeof value === 'object' && value !== null) {
    const proto: unknown = Object.getPrototypeOf(value);
    return (proto === Object.prototype || proto === null) && Object.values(value).every(isPlain);
  }
  return typeof value !== 'function' && typeof value !== 'symbol';
}

export function errorOf(fault: Fault, revivers: Revivers): Error {
  if (fault.name === 'AbortError') return new Cancelled(fault.message);
  const revive = Object.hasOwn(revivers, fault.name) ? revivers[fault.name] : undefined;
  if (revive) return revive(fault);
  const error = Object.assign(new Error(fault.message), fault.data, { name: fault.name });
  if (fault.stack !== undefined) error.stack = fault.stack;
  return error;
}
