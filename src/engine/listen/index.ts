export type * from './circuit.ts';
export { type Arriving, type Broadcast, type Listening, type ListeningOptions, listen } from './listening.ts';
export { listeningFigures } from './listening-figures.ts';
export { type OpenResponse, openResponse } from './open-response.ts';
export { envelopeRate, halfWidthOf, listeningWindow, type Occupied, spectrumHalfWidth } from './rate-plan.ts';
export { receiverCircuit } from './receiver-circuit.ts';
export type { RestBias } from './rest-bias.ts';
export { type NoiseInTime, SetInTime, SOUND_RATE, type TimeOptions, type TimeReport } from './set-in-time.ts';
export type { StationInTime } from './station-sum.ts';
