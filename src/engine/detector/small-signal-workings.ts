import { type Term, term } from '../figure.ts';
import type { DetectorDescription } from './description.ts';
import type { SmallSignal } from './small-signal.ts';
import { thermalVoltage } from './thermal-voltage.ts';

/** Formula and numbers put in, for the two figures from which every other weak-signal figure follows. */
export interface SmallSignalWorkings {
  readonly resistance: { readonly formula: string; readonly terms: readonly Term[] };
  readonly sensitivity: { readonly formula: string; readonly terms: readonly Term[] };
}

/** @param saturationCurrent - at the detector's temperature [A]; null for a law that has none */
export function smallSignalWorkings(d: DetectorDescription, weak: SmallSignal, saturationCurrent: number | null): SmallSignalWorkings {
  const vt = term('Vt', 'thermal voltage k T/q', thermalVoltage(d.temperature), 'V');
  const slope = term("i'", 'slope of the law at zero', 1 / weak.resistance, 'S');
  const bend = term("i''", 'curvature of the law at zero, gate following', (2 * weak.currentSensitivity) / weak.resistance, 'A/V^2');
  const byCurvature = { formula: "beta = i''/(2 i')", terms: [bend, slope] };
  const series = term('Rs', 'series resistance', d.seriesResistance, 'ohm');
  if (d.kind === 'junction') {
    const n = term('n', 'ideality', d.ideality, '1');
    const terms = [n, vt, term('Is', 'saturation current at this temperature', saturationCurrent, 'A'), series];
    return {
      resistance: { formula: 'R = n Vt/Is + Rs', terms },
      sensitivity: { formula: 'beta = 1/(2 n Vt) (Rj/(Rj + Rs))^2, Rj = n Vt/Is', terms },
    };
  }
  if (d.kind === 'channel')
    return {
      resistance: {
        formula: 'R = 1/sigma + Rs, sigma = 2 n beta Vt ln(1 + e) e/(1 + e), e = exp((Vg - Vth)/(2 n Vt))',
        terms: [
          term('n', 'slope factor', d.slopeFactor, '1'),
          term('beta', 'transconductance factor', d.transconductanceFactor, 'A/V^2'),
          vt,
          term('Vg', 'gate bias against the output', d.gateBias, 'V'),
          term('Vth', 'threshold', d.threshold, 'V'),
          series,
        ],
      },
      sensitivity: byCurvature,
    };
  return {
    resistance: {
      formula: "R = 1/i', i' the slope of the interpolated readings at 0 V",
      terms: [slope, term('N', 'rows of the table', d.voltage.length, '1')],
    },
    sensitivity: byCurvature,
  };
}
