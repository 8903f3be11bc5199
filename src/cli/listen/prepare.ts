import {
  assemble,
  bestDial,
  broadcasting,
  DialPassMeter,
  EarInTime,
  type Listening,
  listen,
  ownProgramme,
  type Place,
  passOf,
  type Reception,
  type Station,
  standAt,
} from '#engine';
import type { Loaded } from '../load.ts';
import { whole } from '../whole.ts';
import { type Dialled, dialled, type NotReached, notReached, standing, wantedStation } from './dial.ts';
import { asOption, type ListenOptions, type Plan } from './options.ts';
import { mustDiffer, type Programme, programmeOf } from './programmes.ts';

/** A set going at a place, ready to be written down. */
export interface Prepared {
  readonly place: Place;
  readonly reception: Reception;
  readonly station: Station;
  readonly dialled: Dialled;
  /** of what is heard while the dial turns; null where it stands */
  readonly meter: DialPassMeter | null;
  readonly listening: Listening;
  readonly ear: EarInTime;
  readonly programme: Programme;
  /** what each of the other stations sends, by the words of its programme */
  readonly others: string;
  readonly remarks: readonly string[];
}

/** Reads what is to be played, sets the dial and starts the set. */
export function prepare(loaded: Loaded, plan: Plan, options: ListenOptions): Prepared | NotReached {
  const { place, set, listener } = whole(loaded);
  mustDiffer(plan.out, options.programme);
  mustDiffer(plan.out, options.neighbours);
  const all = standAt(place, assemble(set, listener));
  const where = options.dial ?? 'best';
  const index = wantedStation(all, options.station, where);
  const reception = plan.without.has('neighbours') ? { ...all, signals: [all.signals[index]!] } : all;
  const wanted = plan.without.has('neighbours') ? 0 : index;
  const { station } = reception.signals[wanted]!.received;
  const { tone, level } = listener.programme;
  const programme = programmeOf('programme', options.programme ?? (plan.turned ? 'tone' : ownProgramme(station.programme)), tone, level);
  const { neighbours } = options;
  const other = neighbours === undefined ? null : programmeOf('neighbours', neighbours, tone, level);

  const at = plan.turned ? passing(reception, wanted, plan) : dialled(reception, wanted, where);
  if ('sentence' in at) return at;
  const { turn } = at;
  const meter = turn ? asOption('programme', programme.words, () => new DialPassMeter(turn, programme.sent.tone)) : null;
  const listening = listen(reception, {
    station: wanted,
    angle: at.angle,
    ...(plan.without.has('noise') ? {} : { noise: plan.seed }),
    broadcast: broadcasting(reception, {
      wanted,
      seed: plan.seed,
      sent: (theirs, k) =>
        (k === wanted ? programme : (other ?? programmeOf('neighbours', ownProgramme(theirs.programme), tone, level))).sent,
    }),
  });
  const ear = new EarInTime(reception.receiver, {
    seed: plan.seed,
    room: !plan.without.has('room'),
    hearingLimit: !plan.without.has('hearing'),
    // the file is played by phones that seal: what a leaking earpiece loses, they must not give back
    at: 'ear',
  });
  return {
    place,
    reception,
    station,
    dialled: at,
    meter,
    listening,
    ear,
    programme,
    others: other?.words ?? 'sentences or music, as they send',
    remarks: [...programme.remarks, ...(other?.remarks ?? [])],
  };
}

/** The dial before a turn across all of the station. */
function passing(reception: Reception, station: number, { seconds }: Plan): Dialled | NotReached {
  const dial = bestDial(reception, station);
  if ('missing' in dial) return notReached(reception, station, reception.signals[station]!.received.station.frequency, dial);
  const { tank } = reception.receiver;
  const falling = tank.capacitance(tank.rotation) > tank.capacitance(0);
  const turn = { ...passOf(dial, tank.rotation, falling), seconds };
  return { ...standing(reception, station, turn.from, dial), turn };
}
