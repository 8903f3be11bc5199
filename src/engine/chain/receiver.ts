import { type AerialModel, aerialModel } from '../aerial/index.ts';
import { type DetectorModel, detectorModel } from '../detector/index.ts';
import { type PhonesModel, phonesModel } from '../phones/index.ts';
import { type Place, type ReceivedField, receiveAll } from '../place/index.ts';
import { type TankModel, tankModel } from '../tank/index.ts';
import { type AudioHalf, audioHalf } from './audio-half.ts';
import type { Listener, SetDescription } from './description.ts';
import { type Signal, signalFrom } from './signal.ts';

/** Harmonics of the test tone that are followed; the sampled period holds twice as many points. */
export const HARMONICS = 8;

/** A set with every stage's model made, for a listener: all that does not depend on the station or the dial. */
export interface Receiver {
  readonly set: SetDescription;
  readonly listener: Listener;
  /** null where the coil is the aerial */
  readonly aerial: AerialModel | null;
  readonly tank: TankModel;
  readonly detector: DetectorModel;
  readonly phones: PhonesModel;
  readonly audio: AudioHalf;
}

/** @throws GivenError where a stage was given something that cannot be */
export function assemble(set: SetDescription, listener: Listener): Receiver {
  const tank = tankModel(set.tank, set.aerial.kind === 'coil');
  const phones = phonesModel(set.phones);
  return {
    set,
    listener,
    aerial: set.aerial.kind === 'coil' ? null : aerialModel(set.aerial),
    tank,
    detector: detectorModel(set.detector),
    phones,
    audio: audioHalf(phones, tank.directResistance, listener.programme.tone, HARMONICS),
  };
}

/** A receiver at a place: the stations as its aerial hands them on. */
export interface Reception {
  readonly receiver: Receiver;
  readonly place: Place;
  readonly signals: readonly Signal[];
}

export function standAt(place: Place, receiver: Receiver, fields: readonly ReceivedField[] = receiveAll(place)): Reception {
  return {
    receiver,
    place,
    signals: fields.map((f) =>
      signalFrom(f, receiver.aerial, receiver.set, receiver.tank.effectiveArea, place.site.building !== undefined),
    ),
  };
}
