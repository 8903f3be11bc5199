import { scaleText } from '../aerial/drawing-scale.ts';

const TIMES: Readonly<Record<number, string>> = {
  1: 'true to size',
  2: 'twice its size',
  5: 'five times its size',
  10: 'ten times its size',
  20: 'twenty times its size',
};
const PARTS: Readonly<Record<number, string>> = { 2: 'half its size', 5: 'a fifth of its size', 10: 'a tenth of its size' };

/** How large a thing is drawn: `twice its size`. */
export function sizeWords(scale: number): string {
  const words = scale >= 1 ? TIMES[Math.round(scale)] : PARTS[Math.round(1 / scale)];
  return words ?? `to the scale ${scaleText(scale)}`;
}
