import type { Figure } from '../figure.ts';
import { term } from '../figure.ts';
import type { CoilByGeometry, CoilModel } from './coil-model.ts';
import { helixInductance } from './helix.ts';
import { nagaokaRosaInductance } from './rosa-corrections.ts';
import { longWireInductance } from './straight-wires.ts';
import { crowdingShare, lowFrequencyInductance, windingInductance } from './winding.ts';

/** Inductance of a coil given by geometry, its parts and its rivals, and its self-capacitance, at a frequency [Hz]. */
export function inductanceFigures(g: CoilByGeometry, coil: CoilModel, frequency: number): readonly Figure[] {
  const { winding: w, coil: shape } = g;
  const rings = w.rings.of(w.effectiveTurns);
  const share = crowdingShare(shape.wireDiameter, shape.metal, frequency);
  const total = coil.inductance(frequency);
  const whole = shape.turns % 1 === 0;
  const helix = whole ? helixInductance(w.radius, w.wireRadius, shape.pitch, shape.turns, shape.leadLength) : null;
  const dimensions = [
    term('N', 'turns', shape.turns, '1'),
    term('N_e', 'turns that count for flux', w.effectiveTurns, '1'),
    term('D', 'mean diameter', 2 * w.radius, 'm'),
    term('d', 'wire diameter', shape.wireDiameter, 'm'),
    term('p', 'pitch', shape.pitch, 'm'),
  ];
  const self = g.selfCapacitance;
  return [
    {
      name: 'tank.coil.inductance',
      label: 'inductance of the coil with its leads',
      value: total,
      unit: 'H',
      method: 'ring sum with crowding',
      // pitch and diameter of a hand-wound coil are known to a few per cent
      low: 0.96 * total,
      high: 1.04 * total,
      working: {
        formula: 'L = L_rings + L_along - g dL + L_inside + L_leads',
        terms: [
          term('L_rings', 'sum over rings', rings, 'H'),
          term('L_along', 'current along the axis', w.axial, 'H'),
          term('g dL', 'lost to crowding of the current', share * w.crowding, 'H'),
          term('L_inside', 'flux inside the wire, leads too', total - windingWithoutInside(g, share) - g.leadInductance, 'H'),
          term('L_leads', 'two leads', g.leadInductance, 'H'),
        ],
        source: 'see the figures of its parts',
        holds: 'within 1 % of the field of rings and of the helix for a coil of exactly these dimensions',
      },
    },
    {
      name: 'tank.coil.ringSum',
      label: 'inductance of the turns as rings',
      value: rings,
      unit: 'H',
      method: 'ring sum, surface current',
      working: {
        formula: 'N L_0 + 2 sum (N - n) M_n',
        terms: [
          ...dimensions,
          term(
            'L_nr',
            'rival: Nagaoka and Rosa',
            whole ? nagaokaRosaInductance(shape.turns, 2 * w.radius, shape.wireDiameter, shape.pitch, 'surface') : null,
            'H',
          ),
          term('L_helix', 'rival: helix, current around', helix?.around ?? null, 'H'),
        ],
        source: 'Maxwell, Treatise art. 701; Rayleigh & Niven 1881; Grover, Inductance Calculations (1946) ch. 11, 16',
        holds: 'part of a turn counts by the area of its segment',
      },
    },
    {
      name: 'tank.coil.crowding',
      label: 'inductance lost because turns push each other’s current aside',
      value: share * w.crowding,
      unit: 'H',
      method: 'line dipoles',
      working: {
        formula: "dL = (2 pi a^2 / mu0) 2 pi R sum B_i B_i'",
        terms: [
          ...dimensions,
          term('g', 'share that skin effect allows', share, '1'),
          term('dL', 'with no flux in the metal', w.crowding, 'H'),
        ],
        source: 'Smythe, Static and Dynamic Electricity (1950) sec. 11.05; assembled here',
        holds: 'within 0.8 % of the inductance, against the exact field of rings',
      },
    },
    {
      name: 'tank.coil.leadInductance',
      label: 'inductance of the two leads',
      value: g.leadInductance,
      unit: 'H',
      method: 'pair of straight wires',
      working: {
        formula: 'L = 2 (L_wire - M)',
        terms: [
          term('l', 'each lead', shape.leadLength, 'm'),
          term('s', 'apart', g.leadSpacing, 'm'),
          term(
            'L_long',
            'one such wire alone, by Rosa',
            shape.leadLength > 0 ? longWireInductance(shape.leadLength, w.wireRadius, 'surface') : null,
            'H',
          ),
          term(
            'L_helix',
            'rival: with its coupling to the helix, leads straight out',
            helix && shape.leadLength > 0 ? helix.leads : null,
            'H',
          ),
        ],
        source: 'Grover, Inductance Calculations (1946) ch. 6',
        holds: 'leads side by side at right angles to the axis',
      },
    },
    {
      name: 'tank.coil.lowFrequencyInductance',
      label: 'what a bridge at audio frequency reads, without leads',
      value: lowFrequencyInductance(w),
      unit: 'H',
      method: 'ring sum, uniform current',
      working: {
        formula: 'N L_0 + 2 sum (N - n) M_n + L_along',
        terms: [...dimensions, term('L', 'at this frequency, without leads', windingInductance(w, frequency), 'H')],
        source: 'as for the ring sum; Rayleigh & Niven 1881 for uniform current',
      },
    },
    {
      name: 'tank.coil.selfCapacitance',
      label: 'self-capacitance of the coil',
      value: coil.selfCapacitance,
      unit: 'F',
      method: self.method,
      low: 0.8 * coil.selfCapacitance,
      high: 1.2 * coil.selfCapacitance,
      working: {
        formula: self.method === 'measured coils' ? 'C = H(l / D) D' : 'C = (12 / pi^2) sum v_i q_i, turns as charged rings',
        terms: [
          term('l / D', 'length over diameter', w.length / (2 * w.radius), '1'),
          term('C_rival', self.method === 'measured coils' ? 'charged rings' : 'measured table', self.rival, 'F'),
          term('C_former', 'added by the former', g.former?.capacitance ?? null, 'F'),
        ],
        source: 'Medhurst, Wireless Engineer 24 (1947) 35, 80; electric field of charged rings',
        holds: 'cold end earthed; leads not included: the hot lead adds some 0.05 pF a centimetre',
      },
    },
  ];
}

const windingWithoutInside = (g: CoilByGeometry, share: number): number =>
  g.winding.rings.of(g.winding.effectiveTurns) + g.winding.axial - share * g.winding.crowding;
