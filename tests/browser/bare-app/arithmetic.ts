export const add = (a: number, b: number): number => a + b;
export const double = (a: number): number => 2 * a;
