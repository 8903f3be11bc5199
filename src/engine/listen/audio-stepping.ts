import { EARTH } from '../circuit/index.ts';
import { C, straightHold } from '../numeric/index.ts';
import type { AudioCircuit } from './circuit.ts';
import { circuitEquations, modesOf, solveAll } from './modal-circuit.ts';

/** Frequency about which the poles are looked for [1/s]: any that is of the order of audio. */
const SHIFT = 6000;
/** Modes faster than so many times the sample rate stand still. */
const REACH = 1e4;
/** A pole this near the real axis, by its distance from zero, lies on it. */
const REAL = 1e-9;

/**
 * The audio half, stepped from sample to sample.
 *
 * Each mode is a complex number y' = decay y + sum over p of in_p i_p. Output voltage of detector j before its current at this instant: sum of Re(out_j y),
 * and with it + sum of r_jp i_p; earpiece: sum of Re(ear y) + sum of direct_p i_p. Of a pair of conjugate modes one is kept, its outputs twice. Real modes
 * come first.
 */
export interface AudioStepping {
  readonly modes: number;
  readonly realModes: number;
  readonly ports: number;
  readonly decayRe: Float64Array;
  readonly decayIm: Float64Array;
  /** by mode and port */
  readonly intoRe: Float64Array;
  readonly intoIm: Float64Array;
  readonly outRe: Float64Array;
  readonly outIm: Float64Array;
  readonly earRe: Float64Array;
  readonly earIm: Float64Array;
  /** r_jp [ohm], j-major, and direct_p [ohm] */
  readonly within: Float64Array;
  readonly direct: Float64Array;
  /** R_jp: output voltage j for a steady current p [ohm] */
  readonly steady: Float64Array;
}

/** @param rate - [Hz] */
export function audioStepping(circuit: AudioCircuit, rate: number): AudioStepping {
  const ports = circuit.ports.length;
  const equations = circuitEquations(circuit.elements, {
    ports: circuit.ports,
    voltages: [...circuit.ports.map((p) => ({ from: p.to, to: p.from })), { from: circuit.output, to: EARTH }],
  });
  const zero = equations.pencil.factorAt(C.ZERO);
  const modal = modesOf(equations, C.ZERO, { re: SHIFT, im: 0 }, REACH * rate);
  if (!zero || !modal) throw new Error('the audio circuit has no solution at 0 Hz');
  const full = solveAll(zero, equations);
  const real = (k: number): boolean => Math.abs(modal.poles[k]!.im) <= REAL * C.abs(modal.poles[k]!);
  const all = modal.poles.map((_, k) => k);
  const kept = [...all.filter(real), ...all.filter((k) => !real(k) && modal.poles[k]!.im > 0)];
  const modes = kept.length;
  const s: AudioStepping = {
    modes,
    realModes: kept.filter(real).length,
    ports,
    decayRe: new Float64Array(modes),
    decayIm: new Float64Array(modes),
    intoRe: new Float64Array(modes * ports),
    intoIm: new Float64Array(modes * ports),
    outRe: new Float64Array(modes * ports),
    outIm: new Float64Array(modes * ports),
    earRe: new Float64Array(modes),
    earIm: new Float64Array(modes),
    within: Float64Array.from({ length: ports * ports }, (_, o) => modal.rest[Math.floor(o / ports)]![o % ports]!.re),
    direct: Float64Array.from({ length: ports }, (_, p) => modal.rest[ports]![p]!.re),
    steady: Float64Array.from({ length: ports * ports }, (_, o) => full[Math.floor(o / ports)]![o % ports]!.re),
  };
  kept.forEach((k, m) => {
    const pole = real(k) ? { re: modal.poles[k]!.re, im: 0 } : modal.poles[k]!;
    const share = real(k) ? 1 : 2;
    const { decay, before, after } = straightHold(pole, 1 / rate);
    const gain = C.scale(C.add(before, C.mul(decay, after)), share);
    s.decayRe[m] = decay.re;
    s.decayIm[m] = decay.im;
    const into = modal.into[k]!;
    const outOf = modal.outOf[k]!;
    // the first port that drives the mode does so with one
    const largest = Math.max(...into.map(C.abs));
    const unit = into.find((a) => C.abs(a) > 1e-9 * largest) ?? C.ONE;
    for (let p = 0; p < ports; p++) {
      const a = C.div(into[p]!, unit);
      s.intoRe[m * ports + p] = a.re;
      s.intoIm[m * ports + p] = real(k) ? 0 : a.im;
      const o = C.mul(C.mul(outOf[p]!, unit), gain);
      s.outRe[m * ports + p] = o.re;
      s.outIm[m * ports + p] = real(k) ? 0 : o.im;
      for (let j = 0; j <= ports; j++) {
        const instant = share * C.mul(C.mul(outOf[j]!, into[p]!), after).re;
        if (j < ports) s.within[j * ports + p] = s.within[j * ports + p]! + instant;
        else s.direct[p] = s.direct[p]! + instant;
      }
    }
    const ear = C.mul(C.mul(outOf[ports]!, unit), gain);
    s.earRe[m] = ear.re;
    s.earIm[m] = real(k) ? 0 : ear.im;
  });
  return s;
}
