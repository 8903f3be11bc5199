import { trimmed } from '../aerial/length-text.ts';

const PARTS: Readonly<Record<string, string>> = { '0.125': '1/8', '0.25': '1/4', '0.5': '1/2', '0.75': '3/4' };

/** Turns as a person counts them: `4`, `1 1/2`; in decimals where they are no halves or quarters. */
export function turnsCount(turns: number): string {
  const whole = Math.floor(turns + 1e-9);
  const rest = turns - whole;
  if (Math.abs(rest) < 1e-6) return `${whole}`;
  const part = Object.entries(PARTS).find(([value]) => Math.abs(rest - Number(value)) < 1e-6)?.[1];
  if (!part) return trimmed(turns, 2);
  return whole === 0 ? part : `${whole} ${part}`;
}

/** `1 turn`, `4 1/2 turns`. */
export const turnsWords = (turns: number): string => `${turnsCount(turns)} ${turns <= 1 + 1e-9 ? 'turn' : 'turns'}`;
