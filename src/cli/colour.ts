/** Colour only where a person looks at a terminal that has it, and has not asked for none (NO_COLOR). */
const on = process.stdout.isTTY === true && process.env.NO_COLOR === undefined && process.env.TERM !== 'dumb';
const paint =
  (code: number) =>
  (text: string): string =>
    on ? `\u001b[${code}m${text}\u001b[0m` : text;

export const bold = paint(1);
export const dim = paint(2);
export const red = paint(31);
export const green = paint(32);
export const yellow = paint(33);
