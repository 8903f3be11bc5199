export type * from './circuit.ts';
export { envelopeRate, halfWidthOf, listeningWindow, type Occupied, spectrumHalfWidth } from './rate-plan.ts';
export { receiverCircuit } from './receiver-circuit.ts';
export { type NoiseInTime, SetInTime, SOUND_RATE, type TimeOptions, type TimeReport } from './set-in-time.ts';
export type { StationInTime } from './station-sum.ts';
