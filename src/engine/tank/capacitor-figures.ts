import type { Figure } from '../figure.ts';
import { term } from '../figure.ts';
import type { TankParts } from './tank-parts.ts';
import { capacitorCapacitance, capacitorImpedance, capacitorQ } from './variable-capacitor.ts';

/** The capacitor and the wires to it, at a frequency [Hz] and an angle [rad]. */
export function capacitorFigures(parts: TankParts, frequency: number, angle: number): readonly Figure[] {
  const { capacitor, wiring, joints } = parts.description;
  const z = capacitorImpedance(capacitor, angle, frequency);
  return [
    {
      name: 'tank.capacitor.capacitance',
      label: 'capacitance at this angle',
      value: capacitorCapacitance(capacitor, angle),
      unit: 'F',
      method: capacitor.law.kind === 'table' ? 'measured table' : `law: ${capacitor.law.kind}`,
      working: {
        formula: 'C = C_v C_s / (C_v + C_s) + C_p',
        terms: [
          term('angle', 'from open', angle, 'rad'),
          term('C_s', 'fixed in series', capacitor.series ?? null, 'F'),
          term('C_p', 'fixed in parallel', capacitor.parallel ?? null, 'F'),
        ],
        source: 'Terman, Radio Engineers Handbook (1943) sec. 2, laws of variable condensers',
        holds: 'real plates keep to their law to a few per cent',
      },
    },
    {
      name: 'tank.capacitor.q',
      label: 'Q of the capacitor alone',
      value: capacitorQ(capacitor, angle, frequency),
      unit: '1',
      method: 'series impedance',
      working: {
        formula: 'Q = -X / R, R = R_contact + tan / (w C)',
        terms: [
          term('X', 'reactance', z.im, 'ohm'),
          term('R', 'resistance', z.re, 'ohm'),
          term('R_contact', 'plates, wiper and contact', capacitor.contactResistance, 'ohm'),
          term('tan', 'loss tangent of the dielectric', capacitor.lossTangent, '1'),
          term('L', 'its leads', capacitor.leadInductance, 'H'),
        ],
        source: 'series circuit of the parts given',
      },
    },
    {
      name: 'tank.wiring.inductance',
      label: 'inductance of the wires between coil and capacitor',
      value: parts.path.wiringInductance(frequency),
      unit: 'H',
      method: 'pair of straight wires',
      working: {
        formula: 'L = 2 (L_wire - M) + coupling to the leads in line + flux inside the wire',
        terms: [term('l', 'both ways together', wiring.length, 'm'), term('d', 'diameter', wiring.diameter, 'm')],
        source: 'Rosa, Bull. Bur. Stand. 4 (1908) 301; Grover, Inductance Calculations (1946) ch. 6',
        holds: 'wires side by side, as far apart as the ends of the coil',
      },
    },
    {
      name: 'tank.wiring.resistance',
      label: 'resistance of the wires between coil and capacitor',
      value: parts.path.wiringResistance(frequency),
      unit: 'ohm',
      method: 'skin effect',
      working: {
        formula: 'R = R_dc Re[(ka/2) J_0(ka) / J_1(ka)]',
        terms: [term('l', 'both ways together', wiring.length, 'm'), term('d', 'diameter', wiring.diameter, 'm')],
        source: 'Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5',
        holds: 'bright copper',
      },
    },
    {
      name: 'tank.joints.resistance',
      label: 'resistance of all joints',
      value: parts.path.jointResistance,
      unit: 'ohm',
      method: 'as given',
      working: {
        formula: 'n R_j',
        terms: [term('n', 'joints', joints.count, '1'), term('R_j', 'of one joint', joints.resistance, 'ohm')],
        source: 'given by the user; bright solder about 0.5 milliohm, dull or screwed 10 (estimates)',
      },
    },
  ];
}
