import { C } from '../numeric/index.ts';
import { audioElements, audioLadder } from './audio-network.ts';
import { checkPhonesDescription } from './check-description.ts';
import { couplingAttenuation, leakLoss } from './coupling.ts';
import type { PhonesDescription } from './description.ts';
import { earpieceImpedance } from './earpiece.ts';
import type { PhonesModel } from './model.ts';
import { phonesRemarks } from './phones-remarks.ts';
import { couplerThreshold } from './reference-threshold.ts';
import { sensitivityCurve } from './sensitivity.ts';

/**
 * Everything after the detector, up to the ear canal: a linear audio network and what sound the earpiece makes of its voltage.
 *
 * Sensitivity and threshold are both read on the earpiece's coupler, so that their difference is what counts and the coupler cancels. Sound lost
 * through the gap of an earpiece that does not seal raises the threshold (on the coupler) rather than lowering the sensitivity.
 *
 * @throws GivenError where the description holds something that cannot be built
 * Holds at audio frequencies, small signals: no distortion of its own, no hysteresis; iron's permeability at microwatts may be a half of the
 * catalogue's, and inductances with it.
 */
export function phonesModel(description: PhonesDescription): PhonesModel {
  checkPhonesDescription(description);
  const e = description.earpiece;
  const sensitivity = sensitivityCurve(e, C.abs(earpieceImpedance(e, 1000)));
  return {
    description,
    elements: audioElements(description),
    sensitivity,
    attenuation: (frequency) => couplingAttenuation(e.coupling, frequency),
    threshold: (frequency) => couplerThreshold(e.coupler, frequency) + leakLoss(e.coupling, frequency),
    earpieceImpedance: (frequency) => earpieceImpedance(e, frequency),
    load: (frequency) => audioLadder(description, frequency).load,
    transfer: (frequency) => audioLadder(description, frequency).transfer,
    coupling: e.coupling,
    coupler: e.coupler,
    ears: e.ears,
    remarks: phonesRemarks(description),
  };
}
