import type { Balance } from './harmonic-balance.ts';

/** A steady tone through the set. Arrays by harmonic of the tone, index 1 the fundamental; index 0 is unused. */
export interface ToneLevels {
  /** [Hz] */
  readonly frequency: number;
  /** peak deviation [Hz] or peak modulation depth [1] */
  readonly swing: number;
  readonly converged: boolean;
  /** steady output voltage of the detector [V] */
  readonly meanOutput: number;
  /** earpiece voltage [V rms] by harmonic */
  readonly earpiece: Float64Array;
  /** sound pressure level on the earpiece's coupler [dB SPL] by harmonic */
  readonly level: Float64Array;
  /** real audio power into the earpiece at the fundamental [W] */
  readonly audioPower: number;
  /** 2nd and 3rd harmonic over the fundamental, as earpiece voltages [1] */
  readonly secondHarmonic: number;
  readonly thirdHarmonic: number;
  readonly balance: Balance;
}

/** The set at rest on a carrier: what the detector does before any modulation. */
export interface RestPoint {
  /** open-circuit amplitude at the detector's port and amplitude across the law [V peak] */
  readonly drive: number;
  readonly amplitude: number;
  /** mean (direct) current [A] and output voltage [V] */
  readonly current: number;
  readonly output: number;
  /** conductance the law shows the tank: fundamental current over amplitude [S] */
  readonly radioConductance: number;
  /** conductance the law shows its output, the source held [S] */
  readonly outputConductance: number;
  /** radio power into the law [W] */
  readonly power: number;
  /** detector current for a change of carrier frequency, output held [A/Hz]; for AM: for a relative change of amplitude [A] */
  readonly sensitivity: number;
}

/** Another station at the same dial angle. */
export interface Leak {
  readonly station: string;
  /** its amplitude across the law over that of the wanted one [dB] */
  readonly radio: number;
  /** its programme at the earpiece over the wanted one's as both sound together [dB]; both sending programme of the same level */
  readonly programme: number;
  /** the wanted programme beside it over the same alone [dB]: below zero where it is hushed, above where the other carrier helps the detector along */
  readonly hush: number;
  /** difference of the carriers where it is low enough to be heard as a whistle [Hz], else null */
  readonly whistle: number | null;
  /** detector current at that frequency, output held [A peak]; zero where there is no whistle */
  readonly whistleCurrent: number;
}
