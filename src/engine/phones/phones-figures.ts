import { type Figure, term } from '../figure.ts';
import { C } from '../numeric/index.ts';
import { coupledWindings } from './coupled-windings.ts';
import { couplingAttenuationSource, leakLoss } from './coupling.ts';
import type { PhonesDescription } from './description.ts';
import { driveForLevel } from './drive.ts';
import { earpieceImpedance, piezoLossResistance } from './earpiece.ts';
import type { PhonesModel } from './model.ts';
import { outputResonance } from './output-resonance.ts';
import { couplerThresholdSource } from './reference-threshold.ts';
import { heldRange, sensitivityPerMilliwatt } from './sensitivity.ts';

const AT = 1000;
/** One standard deviation to the range that holds about 80 % of cases. */
const EIGHTY = 1.28;

/** Every number of the phones that a person may doubt, at 1 kHz, with its working. */
export function phonesFigures(m: PhonesModel): readonly Figure[] {
  const d = m.description;
  return [...electrical(d, m), ...acoustic(d, m), ...(d.transformer ? transformer(d) : [])];
}

function electrical(d: PhonesDescription, m: PhonesModel): Figure[] {
  const e = d.earpiece;
  const z = C.abs(m.earpieceImpedance(AT));
  const resonance = outputResonance(d);
  const ladder = 'network from output to earpiece in closed form (series and parallel impedances, coupled windings)';
  return [
    {
      name: 'phones.earpiece.impedance',
      label: 'impedance of the earpiece at 1 kHz, magnitude',
      value: z,
      unit: 'ohm',
      method: e.kind === 'piezo' ? 'capacitance with loss and leak' : 'resistance, inductance and moving part',
      working:
        e.kind === 'piezo'
          ? {
              formula: '|1/(1/R_leak + 1/(R_s + 1/(j 2 pi f C)))|',
              terms: [
                term('C', 'capacitance', e.capacitance, 'F'),
                term('R_s', 'loss resistance, tan d/(2 pi 1 kHz C)', piezoLossResistance(e), 'ohm'),
                term('R_leak', 'leak', e.leakResistance, 'ohm'),
                term('f', 'frequency', AT, 'Hz'),
              ],
              source: 'definition; loss in series so that no direct current passes',
              holds: 'away from the mechanical resonance of the disc',
            }
          : {
              formula: '|R + j 2 pi f L + Z_motion|',
              terms: [
                term('R', 'resistance of the coil', e.resistance, 'ohm'),
                term('L', 'inductance', e.inductance, 'H'),
                term('f', 'frequency', AT, 'Hz'),
                term('R_m', 'moving part, resistance', e.motional?.resistance ?? null, 'ohm'),
              ],
              source: 'definition',
              holds: 'no eddy currents: above a few kHz the impedance of solid iron rises more slowly',
            },
    },
    {
      name: 'phones.load',
      label: 'impedance on the detector at 1 kHz, magnitude',
      value: C.abs(m.load(AT)),
      unit: 'ohm',
      method: 'network in closed form',
      working: { formula: '|Z(output, 1 kHz)|', terms: [term('Z_e', 'earpiece', z, 'ohm')], source: ladder },
    },
    {
      name: 'phones.directResistance',
      label: 'resistance to the direct current of the detector',
      value: m.load(0).re,
      unit: 'ohm',
      method: 'network at 0 Hz',
      working: {
        formula: 'Z(output, 0 Hz)',
        terms: [
          term('R_load', 'load resistor', d.load ?? null, 'ohm'),
          term('R_choke', 'resistance of the choke', d.choke?.resistance ?? null, 'ohm'),
          term('R_1', 'primary resistance', d.transformer?.primaryResistance ?? null, 'ohm'),
          term('C_b', 'blocking capacitor', d.blocking ?? null, 'F'),
        ],
        source: ladder,
        holds: 'a blocking capacitor counts with its insulation, 10 000 s over its capacitance: estimate',
      },
    },
    {
      name: 'phones.transfer',
      label: 'voltage on the earpiece over voltage on the detector at 1 kHz',
      value: 20 * Math.log10(C.abs(m.transfer(AT))),
      unit: 'dB',
      method: 'network in closed form',
      working: { formula: '20 log10 |V(earpiece)/V(output)|', terms: [term('f', 'frequency', AT, 'Hz')], source: ladder },
    },
    {
      name: 'phones.resonance',
      label: 'resonance of choke or primary with the capacitance across it',
      value: resonance?.frequency ?? null,
      unit: 'Hz',
      method: 'lossless parallel circuit',
      working: {
        formula: '1/(2 pi sqrt(L C))',
        terms: [
          term('L', 'choke and primary in parallel', resonance?.inductance ?? null, 'H'),
          term('C', 'bypass, winding and piezo as the output sees them', resonance?.capacitance ?? null, 'F'),
        ],
        source: 'definition',
        holds: 'blocking capacitor as a short; no leakage; null without an inductor or without a piezo',
      },
    },
  ];
}

function acoustic(d: PhonesDescription, m: PhonesModel): Figure[] {
  const e = d.earpiece;
  const z = C.abs(m.earpieceImpedance(AT));
  const perVolt = m.sensitivity(AT);
  const threshold = m.threshold(AT);
  const drive = driveForLevel(threshold, perVolt, z);
  const spread = EIGHTY * e.sensitivitySpread;
  const held = heldRange(e.sensitivity);
  const given = `given per ${e.sensitivityAt} on the ${e.coupler} coupler, ${e.sensitivity.length} point(s)`;
  const holds = `straight lines in dB against log f; held from ${held.from} Hz to ${held.to} Hz, 12 dB per octave beyond (estimate)`;
  return [
    {
      name: 'phones.sensitivity',
      label: 'sensitivity at 1 kHz, for 1 V rms',
      value: perVolt,
      unit: 'dB SPL',
      method: given,
      low: perVolt - spread,
      high: perVolt + spread,
      working: {
        formula: 'S_V = S_mW + 10 log10(1000/Z)',
        terms: [term('Z', 'impedance at 1 kHz', z, 'ohm'), term('sigma', 'standard deviation', e.sensitivitySpread, 'dB')],
        source: 'IEC 60268-7 definitions',
        holds,
      },
    },
    {
      name: 'phones.sensitivityPerMilliwatt',
      label: 'sensitivity at 1 kHz, for 1 mW',
      value: sensitivityPerMilliwatt(perVolt, z),
      unit: 'dB SPL',
      method: given,
      low: sensitivityPerMilliwatt(perVolt, z) - spread,
      high: sensitivityPerMilliwatt(perVolt, z) + spread,
      working: {
        formula: 'S_mW = S_V - 10 log10(1000/Z)',
        terms: [term('S_V', 'sensitivity for 1 V', perVolt, 'dB SPL'), term('Z', 'impedance at 1 kHz', z, 'ohm')],
        source: 'IEC 60268-7 definitions',
        holds: 'apparent power where the earpiece is not a resistance',
      },
    },
    {
      name: 'phones.threshold',
      label: 'quietest 1 kHz tone one normal ear hears under this earpiece',
      value: threshold,
      unit: 'dB SPL',
      method: `reference threshold on the ${e.coupler} coupler`,
      working: {
        formula: 'RETSPL + leak',
        terms: [term('leak', 'sound lost through the gap, not seen by the coupler', leakLoss(e.coupling, AT), 'dB')],
        source: couplerThresholdSource(e.coupler),
        holds: 'otologically normal young listeners in silence; the leak of a plug or an open earpiece is an estimate',
      },
    },
    {
      name: 'phones.thresholdVoltage',
      label: 'voltage on the earpiece that is just audible at 1 kHz',
      value: drive.voltage,
      unit: 'V rms',
      method: 'threshold over sensitivity',
      low: drive.voltage / 10 ** (spread / 20),
      high: drive.voltage * 10 ** (spread / 20),
      working: {
        formula: '10^((T - S_V)/20)',
        terms: [term('T', 'threshold', threshold, 'dB SPL'), term('S_V', 'sensitivity for 1 V', perVolt, 'dB SPL')],
        source: 'IEC 60268-7 definitions',
      },
    },
    {
      name: 'phones.thresholdPower',
      label: 'electrical power that is just audible at 1 kHz',
      value: drive.power,
      unit: 'W',
      method: 'threshold voltage on the impedance at 1 kHz',
      low: drive.power / 10 ** (spread / 10),
      high: drive.power * 10 ** (spread / 10),
      working: {
        formula: 'V^2/Z = 1 mW 10^((T - S_mW)/10)',
        terms: [term('V', 'threshold voltage', drive.voltage, 'V rms'), term('Z', 'impedance at 1 kHz', z, 'ohm')],
        source: 'IEC 60268-7 definitions',
        holds: 'apparent power where the earpiece is not a resistance',
      },
    },
    {
      name: 'phones.attenuation',
      label: 'room noise kept out at 1 kHz',
      value: m.attenuation(AT),
      unit: 'dB',
      method: e.coupling,
      working: {
        formula: 'table by coupling, straight lines against log f',
        terms: [term('f', 'frequency', AT, 'Hz')],
        source: couplingAttenuationSource(e.coupling),
        holds: '125 Hz to 8 kHz; about 5 dB from person to person',
      },
    },
  ];
}

function transformer(d: PhonesDescription): Figure[] {
  const t = d.transformer!;
  const w = coupledWindings(t);
  const z = C.abs(earpieceImpedance(d.earpiece, AT));
  return [
    {
      name: 'phones.transformer.coupling',
      label: 'coupling coefficient of the transformer',
      value: w.coupling,
      unit: '1',
      method: 'from primary inductance and leakage',
      working: {
        formula: 'k = sqrt(1 - L_k/L_p)',
        terms: [
          term('L_p', 'primary inductance, secondary open', t.primaryInductance, 'H'),
          term('L_k', 'leakage at the primary, secondary shorted', t.leakageInductance, 'H'),
        ],
        source: "Terman, Radio Engineers' Handbook (1943), sec. 2",
        holds: 'inductances at the level of use; iron at microwatts may have half its catalogue inductance',
      },
    },
    {
      name: 'phones.transformer.earpieceAtPrimary',
      label: 'earpiece as the ideal ratio would show it at the primary, 1 kHz',
      value: t.ratio * t.ratio * z,
      unit: 'ohm',
      method: 'turns ratio squared',
      working: {
        formula: 'n^2 Z_e',
        terms: [term('n', 'turns ratio', t.ratio, '1'), term('Z_e', 'earpiece', z, 'ohm')],
        source: 'ideal transformer',
        holds: 'compare with the impedance on the detector, which has inductance, leakage and losses in it',
      },
    },
  ];
}
