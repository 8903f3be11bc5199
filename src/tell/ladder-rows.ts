import type { Rung, StationReport } from '#engine';
import { valueText } from './figure-text.ts';

/** A rung of the ladder as text. */
export interface RungText {
  readonly name: string;
  readonly label: string;
  readonly value: string;
  /** what the way from the rung above cost, `12.4 dB`; empty where loss has no meaning there */
  readonly cost: string;
  /** the costliest step of those a builder can mend */
  readonly costliest: boolean;
}

/** The ladder of a station; field strength is told in dB as well, since that is how it is spoken of. */
export function ladderRows(report: StationReport): readonly RungText[] {
  const rungs = report.heard?.ladder ?? [];
  const worst = report.verdict.costliest?.rung;
  return rungs.map((r) => ({
    name: r.figure.name,
    label: r.figure.label,
    value: levelText(r),
    cost: r.cost === null ? '' : `${r.cost.toFixed(1)} dB`,
    costliest: r.figure.label === worst && (r.cost ?? 0) > 1,
  }));
}

/** Below this a power is told in dBm only: no one reads attowatts [W]. */
const LEAST_WATTS = 1e-15;

function levelText(r: Rung): string {
  const { value, unit } = r.figure;
  const text = valueText(r.figure);
  if (value === null || !(value > 0)) return text;
  if (unit === 'V/m rms') return `${text} (${(20 * Math.log10(value * 1e6)).toFixed(1)} dBµV/m)`;
  if (unit !== 'W') return text;
  const level = `${(10 * Math.log10(value * 1e3)).toFixed(1)} dBm`;
  return value < LEAST_WATTS ? level : `${text} (${level})`;
}
