import { SPEED_OF_LIGHT } from '../../constants.ts';
import { C } from '../../numeric/index.ts';
import { type Discretised, halfCurrent, type WireSolution } from './solve-wires.ts';

/** Current at the ends and the middle of each segment of each wire, by the feed's current, for drawing. */
export interface WireCurrent {
  readonly wire: number;
  /** [m] */
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly re: number;
  readonly im: number;
}

export function wireCurrents(d: Discretised, s: WireSolution): readonly WireCurrent[] {
  const { mesh: m } = d;
  const k = (2 * Math.PI * s.frequency) / SPEED_OF_LIGHT;
  const out: WireCurrent[] = [];
  for (let i = 0; i < m.segments; i++) {
    const a = C.div(halfCurrent(m, 2 * i, s.re, s.im), s.admittance);
    const b = C.div(halfCurrent(m, 2 * i + 1, s.re, s.im), s.admittance);
    // sin k(d/2)/sin kd of each end's current in the middle
    const middle = C.scale(C.add(a, b), 1 / (2 * Math.cos((k * m.length[i]!) / 2)));
    [a, middle, b].forEach((v, j) => {
      const t = (j / 2) * m.length[i]!;
      out.push({
        wire: m.wire[i]!,
        x: m.x[i]! + t * m.tx[i]!,
        y: m.y[i]! + t * m.ty[i]!,
        z: m.z[i]! + t * m.tz[i]!,
        re: v.re,
        im: v.im,
      });
    });
  }
  return out;
}
