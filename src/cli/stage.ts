import { assemble, type Place, type Reception, receiveAll, reportStation, type StationReport, standAt } from '#engine';
import { detectorGroups, earGroups, type Group, phonesGroups, placeGroups, tankGroups } from '#tell';
import type { AerialOptions } from './aerial.ts';
import { printGroups } from './group.ts';
import { checked, type Loaded, load, loadPlace } from './load.ts';
import { pickStations } from './pick.ts';
import { whole } from './whole.ts';

export interface StageOptions extends AerialOptions {
  readonly station?: string;
  readonly json?: boolean;
  readonly working?: string;
}

interface Stage {
  readonly name: string;
  readonly description: string;
  /** options of its own: as they are written, and what they do */
  readonly options?: readonly (readonly [flags: string, what: string])[];
  readonly groups: (file: string, station: string | undefined, options: StageOptions) => readonly Group[] | Promise<readonly Group[]>;
}

/** One command for each stage, in the order of the path. */
export const STAGES: readonly Stage[] = [
  {
    name: 'place',
    description: 'field strength of each station where the aerial stands, with its spread, noise and exposure',
    groups: (file, wanted) => {
      const loaded = loadPlace(file);
      const fields = checked(loaded, () => receiveAll(loaded.place));
      return placeGroups(stationsOf(loaded.place, wanted).map((k) => fields[k]!));
    },
  },
  {
    name: 'aerial',
    description: 'impedance, effective length and losses toward each station; of one made of wires also pattern, cutting list and drawings',
    options: [
      ['--segments <n>', 'forces the number of segments, for an aerial of wires'],
      ['--draw <svg>', 'writes a drawing to scale with the lengths to cut'],
      ['--pattern <svg>', 'writes the pattern round the compass, and beside it (-upright) the one over the top'],
      ['--impedance <svg>', 'writes resistance and reactance over the band'],
    ],
    groups: async (file, wanted, options) => (await import('./aerial.ts')).aerialCommand(file, wanted, options),
  },
  {
    name: 'tank',
    description: 'coil, capacitor, losses, dial and sharpness, at the best place on the dial for each station',
    groups: (file, wanted) => ofReports(file, wanted, tankGroups),
  },
  {
    name: 'detector',
    description: 'what the detector is at rest, and how it turns radio into audio',
    groups: (file) => ofLoaded(file, (loaded) => detectorGroups(loaded, loaded.parts)),
  },
  {
    name: 'phones',
    description: 'audio network and earpiece',
    groups: (file) => ofLoaded(file, (loaded) => phonesGroups(loaded, loaded.parts)),
  },
  {
    name: 'ear',
    description: 'what is heard of each station: headroom by band, loudness, intelligibility',
    groups: (file, wanted) => ofReports(file, wanted, (_, reports) => earGroups(reports)),
  },
];

const stationsOf = (place: Place, wanted: string | undefined): readonly number[] =>
  pickStations(
    place.stations.map((s) => s.name),
    wanted,
  );

function ofLoaded(file: string, work: (loaded: Loaded) => readonly Group[]): readonly Group[] {
  const loaded = load(file);
  return checked(loaded, () => work(loaded));
}

function ofReports(
  file: string,
  wanted: string | undefined,
  work: (reception: Reception, reports: readonly StationReport[]) => readonly Group[],
): readonly Group[] {
  return ofLoaded(file, (loaded) => {
    const { place, set, listener } = whole(loaded);
    const reception = standAt(place, assemble(set, listener));
    const reports = stationsOf(place, wanted).map((k) => reportStation(reception, k));
    return work(reception, reports);
  });
}

export async function stageCommand(stage: Stage, file: string, options: StageOptions): Promise<void> {
  printGroups(await stage.groups(file, options.station, options), options, { file, stage: stage.name });
}
