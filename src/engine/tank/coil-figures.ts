import type { Figure } from '../figure.ts';
import { term } from '../figure.ts';
import type { CoilByGeometry, CoilModel } from './coil-model.ts';
import { inductanceFigures } from './inductance-figures.ts';
import { thomsonFrequency } from './resonance-formula.ts';
import type { TankParts } from './tank-parts.ts';
import { windingResistance } from './winding-resistance.ts';

/** The coil at a frequency [Hz]. */
export function coilFigures(parts: TankParts, frequency: number): readonly Figure[] {
  const { coil } = parts;
  const given = parts.description.coil;
  const { copper, leads, radiation } = coil.resistances(frequency);
  const inductance = coil.inductance(frequency);
  const common: Figure[] = [
    {
      name: 'tank.coil.q',
      label: 'Q of the coil alone',
      value: (2 * Math.PI * frequency * inductance) / (copper + leads + radiation),
      unit: '1',
      method: coil.geometry ? 'computed resistance' : 'given',
      working: {
        formula: 'Q = 2 pi f L / R',
        terms: [
          term('L', 'with leads', inductance, 'H'),
          term('R', 'copper of the winding', copper, 'ohm'),
          term('R', 'leads', leads, 'ohm'),
          term('R', 'radiation', radiation, 'ohm'),
        ],
        source: coil.geometry ? 'as for each term' : 'given by the user; resistance taken to grow with the square root of frequency',
      },
    },
    {
      name: 'tank.coil.selfResonance',
      label: 'self-resonance of the coil',
      value: coil.selfCapacitance > 0 ? thomsonFrequency(inductance, coil.selfCapacitance) : null,
      unit: 'Hz',
      method: 'lumped',
      working: {
        formula: '1 / (2 pi sqrt(L C_self))',
        terms: [term('L', 'with leads', inductance, 'H'), term('C_self', 'self-capacitance', coil.selfCapacitance, 'F')],
        source: 'Thomson, Phil. Mag. 5 (1853) 393',
        holds: 'rough; the coil should be used well below it',
      },
    },
  ];
  if (!coil.geometry || given.kind !== 'geometry')
    return [
      {
        name: 'tank.coil.inductance',
        label: 'inductance of the coil',
        value: inductance,
        unit: 'H',
        method: 'given',
        working: { formula: 'L', terms: [term('L', 'as given', inductance, 'H')], source: 'given by the user' },
      },
      ...common,
    ];
  return [
    ...inductanceFigures(coil.geometry, coil, frequency),
    ...resistanceFigures(coil.geometry, coil, frequency),
    ...lengthFigures(coil.geometry),
    ...common,
  ];
}

function resistanceFigures(g: CoilByGeometry, coil: CoilModel, frequency: number): readonly Figure[] {
  const r = windingResistance(g.coil, frequency);
  const { leads, radiation } = coil.resistances(frequency);
  return [
    {
      name: 'tank.coil.resistance',
      label: 'RF resistance of the winding',
      value: r.resistance,
      unit: 'ohm',
      method: r.method,
      working: {
        formula: 'R = R_straight phi',
        terms: [
          term('R_straight', 'same wire pulled straight', r.straightResistance, 'ohm'),
          term('phi', 'proximity factor', r.proximityFactor, '1'),
          term('R_dc', 'to direct current', g.winding.directResistance, 'ohm'),
          term('s', 'surface factor', g.coil.surfaceFactor, '1'),
        ],
        source: r.source,
      },
    },
    {
      name: 'tank.coil.proximityFactor',
      label: 'how much neighbouring turns raise the resistance',
      value: r.proximityFactor,
      unit: '1',
      method: r.method,
      working: {
        formula: 'phi = R / R_straight',
        terms: [term('d / p', 'wire over pitch', g.coil.wireDiameter / g.coil.pitch, '1'), term('N', 'turns', g.coil.turns, '1')],
        source: r.source,
      },
    },
    {
      name: 'tank.coil.leadResistance',
      label: 'RF resistance of the two leads',
      value: leads,
      unit: 'ohm',
      method: 'skin effect',
      working: {
        formula: 'R = R_dc Re[(ka/2) J_0(ka) / J_1(ka)]',
        terms: [term('l', 'each lead', g.coil.leadLength, 'm'), term('d', 'diameter', g.coil.wireDiameter, 'm')],
        source: 'Ramo, Whinnery & Van Duzer, Fields and Waves, sec. 4.5',
      },
    },
    {
      name: 'tank.coil.radiationResistance',
      label: 'radiation resistance of the coil',
      value: radiation,
      unit: 'ohm',
      method: 'small loop',
      working: {
        formula: 'R_r = eta0 k^4 A^2 / (6 pi)',
        terms: [term('A', 'area, all turns together', coil.effectiveArea, 'm^2'), term('f', 'frequency', frequency, 'Hz')],
        source: 'Balanis, Antenna Theory, eq. 5-24',
        holds: 'wire well below a tenth of a wavelength',
      },
    },
  ];
}

function lengthFigures(g: CoilByGeometry): readonly Figure[] {
  const cut = g.winding.wireLength + 2 * g.coil.leadLength;
  return [
    {
      name: 'tank.coil.wireLength',
      label: 'wire to cut',
      value: cut,
      unit: 'm',
      method: 'helix and two leads',
      working: {
        formula: 'N sqrt((pi D)^2 + p^2) + 2 l',
        terms: [term('D', 'mean diameter', 2 * g.winding.radius, 'm'), term('l', 'each lead', g.coil.leadLength, 'm')],
        source: 'geometry of the helix',
      },
    },
    {
      name: 'tank.coil.windingLength',
      label: 'length of the winding',
      value: g.winding.length,
      unit: 'm',
      method: 'turns times pitch',
      working: {
        formula: 'N p',
        terms: [term('N', 'turns', g.coil.turns, '1'), term('p', 'pitch', g.coil.pitch, 'm')],
        source: 'geometry of the helix',
      },
    },
  ];
}
