import { brent } from '../numeric/index.ts';
import type { PortCapacitance, TankModel } from './model.ts';
import { thomsonFrequency } from './resonance-formula.ts';

/** One place on the dial of the tank alone. */
export interface DialPoint {
  /** from minimum capacitance [rad] */
  readonly angle: number;
  /** of the capacitor [F] */
  readonly capacitance: number;
  /** resonance [Hz]; null where there is none */
  readonly frequency: number | null;
  /** how fast it moves with the angle [Hz/rad]; null where there is no resonance. Per degree: times pi / 180 */
  readonly slope: number | null;
}

export interface TuningRange {
  /** at full capacitance [Hz] */
  readonly lowest: number | null;
  /** at least capacitance [Hz] */
  readonly highest: number | null;
}

/** Where the dial stands for a frequency, or what it lacks. */
export interface DialSetting {
  /** [rad]; null where the frequency is not reached */
  readonly angle: number | null;
  /**
   * Where it is not reached: capacitance across the tank [F], or else inductance of the coil [H], to be added (above zero) or taken away
   * (below zero) for the nearer end of the dial to lie there. Inductance null where the leads alone have too much.
   */
  readonly missing: { readonly capacitance: number; readonly inductance: number | null } | null;
  readonly remark: string | null;
}

/**
 * Lowest frequency at which the tank alone resonates: no reactive current at its top, Im Y = 0.
 *
 * @param angle - [rad]
 * @param port - capacitance of aerial and detector [F], if any
 * @returns [Hz]; null where there is none (never the case for a sound tank)
 */
export function tankResonance(model: TankModel, angle: number, port?: PortCapacitance): number | null {
  const susceptance = (f: number) => model.admittance(f, angle, port).im;
  const across = model.capacitance(angle) + model.selfCapacitance + model.strayCapacitance;
  const leads = model.pathInductance / model.inductance;
  // with every lead counted in full the resonance would be lower than it is, with none of them higher
  const alone = thomsonFrequency(model.inductance, across);
  let low = (0.95 * alone) / Math.sqrt(1 + leads);
  for (let step = 0; susceptance(low) > 0; step++) {
    if (step === 40) return null;
    low /= 1.5;
  }
  // the capacitor with its leads turns inductive a factor sqrt(1 + 1 / leads) above the resonance: steps must not jump over both
  const stride = Math.min(1.07, (1 + 1 / leads) ** 0.25);
  for (let high = low * stride; low < 1.1 * alone; high *= stride) {
    if (susceptance(high) > 0) return brent(susceptance, low, high, 1e-9 * low);
    low = high;
  }
  return null;
}

/** Both ends of the dial of the tank alone. */
export function tuningRange(model: TankModel, port?: PortCapacitance): TuningRange {
  return { lowest: tankResonance(model, model.rotation, port), highest: tankResonance(model, 0, port) };
}

/**
 * The dial of the tank alone, at evenly spaced angles.
 *
 * @param points - number of angles, two or more
 */
export function dialTable(model: TankModel, points: number, port?: PortCapacitance): readonly DialPoint[] {
  const step = model.rotation / (points - 1);
  return Array.from({ length: points }, (_, i) => {
    const angle = i * step;
    const frequency = tankResonance(model, angle, port);
    return {
      angle,
      capacitance: model.capacitance(angle),
      frequency,
      slope: frequency === null ? null : dialSlope(model, angle, frequency, port),
    };
  });
}

/** of the rotation and of the frequency: small against their curves, large against rounding */
const STEP = 2e-5;

/** How fast the resonance moves with the angle [Hz/rad]: df/d(angle) = -(dB/d angle) / (dB/df), from differences a short step either way, inside the rotation. */
export function dialSlope(model: TankModel, angle: number, frequency: number, port?: PortCapacitance): number {
  const before = Math.max(0, angle - model.rotation * STEP);
  const after = Math.min(model.rotation, angle + model.rotation * STEP);
  const byAngle = (model.admittance(frequency, after, port).im - model.admittance(frequency, before, port).im) / (after - before);
  const f1 = frequency * (1 - STEP);
  const f2 = frequency * (1 + STEP);
  const byFrequency = (model.admittance(f2, angle, port).im - model.admittance(f1, angle, port).im) / (f2 - f1);
  return -byAngle / byFrequency;
}

/**
 * Angle at which the tank alone resonates at a frequency.
 *
 * @param frequency - [Hz]
 * @returns the setting; a frequency outside the dial is a physical no, with what is missing
 */
export function dialSetting(model: TankModel, frequency: number, port?: PortCapacitance): DialSetting {
  const susceptance = (angle: number) => model.admittance(frequency, angle, port).im;
  const angle = brent(susceptance, 0, model.rotation, 1e-9 * model.rotation);
  if (angle !== null) return { angle, missing: null, remark: null };
  const w = 2 * Math.PI * frequency;
  const ends = [susceptance(0), susceptance(model.rotation)];
  // too much capacitance at both ends, or too little: the end that comes nearer counts
  const open = ends[0]! > 0;
  const excess = open ? Math.min(...ends) : Math.max(...ends);
  const capacitance = -excess / w;
  // the coil's own susceptance is about -1 / (w L): it must change by as much as is in excess
  const needed = 1 / (w * model.inductance) + excess;
  const inductance = needed > 0 ? 1 / (w * needed) - model.inductance : null;
  const pF = `${Number(Math.abs(capacitance * 1e12).toPrecision(2))} pF`;
  const nH = inductance === null ? 'leads' : `${Number(Math.abs(inductance * 1e9).toPrecision(2))} nH of coil`;
  const remark = open
    ? `the dial ends below ${mega(frequency)}: ${pF} of capacitance or ${nH} too much`
    : `the dial ends above ${mega(frequency)}: ${pF} of capacitance or ${nH} missing`;
  return { angle: null, missing: { capacitance, inductance }, remark };
}

const mega = (frequency: number): string => `${(frequency / 1e6).toPrecision(4)} MHz`;
