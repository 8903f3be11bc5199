import { freeSpaceStep, HORIZONTAL_SHARE, type MethodField, type Situation } from './method-field.ts';

/** Free space: an upper bound for a clear sight line. */
export function freeSpaceMethod(situation: Situation): MethodField {
  return {
    method: 'free-space',
    steps: [freeSpaceStep(situation)],
    horizontalShare: situation.station.frequency < 30e6 ? 0 : HORIZONTAL_SHARE[situation.station.polarisation],
    elevation: situation.path.elevation,
    nearness: 1,
    remarks: situation.path.beyondHorizon ? ["Free space does not know the earth's bulge, and this mast is behind it."] : [],
  };
}
