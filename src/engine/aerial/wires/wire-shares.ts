import { SPEED_OF_LIGHT } from '../../constants.ts';
import { C, type Complex } from '../../numeric/index.ts';
import type { Arrival } from '../model.ts';
import { currentMoment } from './effective-length.ts';
import { loadImpedance } from './load-impedance.ts';
import { type Discretised, halfCurrent, selfProducts, type WireSolution, wireImpedances } from './solve-wires.ts';

/** What one wire does in the whole. */
export interface WireShare {
  readonly wire: number;
  /** its part of the effective length [m]: they add, as complex numbers, to the whole; parts that oppose each other cancel */
  readonly horizontal: Complex;
  readonly vertical: Complex;
  /** its part of the loss resistance, loads on it counted [ohm] */
  readonly lossResistance: number;
}

/**
 * Effective length and loss, wire by wire: which of them hears, which works against the rest, and which only warms.
 *
 * @param arrival - direction of the wave
 */
export function wireShares(d: Discretised, s: WireSolution, arrival: Arrival): readonly WireShare[] {
  const k = (2 * Math.PI * s.frequency) / SPEED_OF_LIGHT;
  const perMetre = wireImpedances(d, s.frequency);
  const { mesh: m } = d;
  const scale = C.abs2(s.admittance);
  return d.structure.wires.map((_, wire) => {
    const moment = currentMoment(m, d.feedPoint, s.frequency, s.re, s.im, arrival, wire);
    let heat = 0;
    for (let i = 0; i < m.segments; i++) {
      if (m.wire[i] !== wire) continue;
      const { same, other } = selfProducts(k, m.length[i]!);
      const a = halfCurrent(m, 2 * i, s.re, s.im);
      const b = halfCurrent(m, 2 * i + 1, s.re, s.im);
      heat += perMetre[wire]!.re * (same * (C.abs2(a) + C.abs2(b)) + 2 * other * (a.re * b.re + a.im * b.im));
    }
    for (const { half, index } of d.loads)
      if (m.wire[half >> 1] === wire)
        heat += loadImpedance(d.structure.loads[index]!, s.frequency).re * C.abs2(halfCurrent(m, half, s.re, s.im));
    return {
      wire,
      horizontal: C.div(moment.horizontal, s.admittance),
      vertical: C.div(moment.vertical, s.admittance),
      lossResistance: heat / scale,
    };
  });
}
