/** A place or a step on the paper [mm]: x to the right, y down. */
export interface Vector {
  readonly x: number;
  readonly y: number;
}

export const vector = (x: number, y: number): Vector => ({ x, y });
export const add = (a: Vector, b: Vector): Vector => ({ x: a.x + b.x, y: a.y + b.y });
export const subtract = (a: Vector, b: Vector): Vector => ({ x: a.x - b.x, y: a.y - b.y });
export const scale = (a: Vector, k: number): Vector => ({ x: a.x * k, y: a.y * k });
export const dot = (a: Vector, b: Vector): number => a.x * b.x + a.y * b.y;
export const distance = (a: Vector, b: Vector): number => Math.hypot(a.x - b.x, a.y - b.y);
export const middle = (a: Vector, b: Vector): Vector => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 });

/** Unit vector of a step; to the right where it has no length. */
export function unit(a: Vector): Vector {
  const length = Math.hypot(a.x, a.y);
  return length > 0 ? { x: a.x / length, y: a.y / length } : { x: 1, y: 0 };
}
