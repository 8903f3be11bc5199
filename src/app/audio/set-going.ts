import { assemble, broadcasting, EarInTime, type Listening, listen, type Reception, settleEar, standAt } from '#engine';
import { readSetFile } from '#set-file';
import type { Play } from './protocol.ts';
import { sentBy } from './sent.ts';

const NOISE_SEED = 1;

/** A set that plays. */
export interface SetGoing {
  readonly reception: Reception;
  readonly listening: Listening;
  /** Fills both arrays with the samples that follow [Pa]: all there is to hear, and the set's own sound alone. */
  next(all: Float64Array, own: Float64Array): void;
}

/**
 * Sets a document's set going, for the station and the dial asked for.
 *
 * @returns null where the document has a fault; what it is, is told where it is edited
 * @throws GivenError for what the engine refuses, WavError for a recording that cannot be read
 */
export function setGoing(play: Play): SetGoing | null {
  const result = readSetFile(play.text, { read: (name) => fileNamed(play.files, name) });
  if (!result.ok || !result.value.place) return null;
  const { place, aerial, tank, detector, phones, ear: listenersEar, programme } = result.value;
  const all = standAt(place, assemble({ aerial, tank, detector, phones }, { ear: listenersEar, programme }));
  const reception = play.with.neighbours ? all : { ...all, signals: all.signals.filter((s) => s.received.station.name === play.station) };
  const wanted = reception.signals.findIndex((s) => s.received.station.name === play.station);
  const listening = listen(reception, {
    station: wanted,
    angle: play.angle,
    ...(play.with.noise ? { noise: NOISE_SEED } : {}),
    broadcast: broadcasting(reception, {
      wanted,
      seed: 0,
      sent: (station, k) => sentBy(k === wanted ? play.sent : { kind: 'own' }, station.programme, play.sentences, programme),
    }),
  });
  // the listener's own phones seal, whatever the set's earpiece does
  const ear = new EarInTime(reception.receiver, {
    seed: NOISE_SEED,
    room: play.with.room,
    hearingLimit: play.with.hearingLimit,
    at: 'ear',
  });
  let volts = new Float64Array(0);
  let begun = false;
  return {
    reception,
    listening,
    next(everything, own) {
      if (volts.length !== own.length) volts = new Float64Array(own.length);
      listening.set.process(volts);
      // the earpiece has had the set's steady voltage since long before
      if (!begun) settleEar(ear, volts[0] ?? 0);
      begun = true;
      ear.process(volts, everything, own);
    },
  };
}

function fileNamed(files: Play['files'], name: string): string {
  if (!Object.hasOwn(files, name)) throw new Error(`there is no file ${name}`);
  return files[name]!;
}
