import { type AerialDescription, GivenError } from '#engine';
import { aerialGroups, aerialView, type Group, viewGroups } from '#tell';
import { type DrawingOptions, writeDrawings } from './aerial-drawings.ts';
import { BadFile } from './bad-file.ts';
import { checked, type Loaded, load } from './load.ts';
import { pickStations } from './pick.ts';
import { whole } from './whole.ts';

export interface AerialOptions extends DrawingOptions {
  readonly segments?: string;
}

/** `earshot aerial`: the aerial toward each station; one made of wires also over the band, in pattern and to cut. Writes the drawings asked for. */
export function aerialCommand(file: string, wanted: string | undefined, options: AerialOptions): readonly Group[] {
  const loaded = load(file);
  return checked(loaded, () => {
    try {
      return groups(loaded, wanted, options);
    } catch (e) {
      if (e instanceof GivenError && e.path === 'aerial.segments' && options.segments !== undefined)
        throw new BadFile(`--segments ${options.segments}: ${e.why}\n  ${e.mend}`);
      throw e;
    }
  });
}

function groups(loaded: Loaded, wanted: string | undefined, options: AerialOptions): readonly Group[] {
  const { place, set } = whole(loaded);
  const aerial = forced(set.aerial, options);
  const chosen = pickStations(
    place.stations.map((s) => s.name),
    wanted,
  );
  if (aerial.kind === 'coil') return aerialGroups(place, aerial, chosen);
  const view = aerialView(place, aerial, chosen);
  writeDrawings(loaded.name, view, options);
  return viewGroups(place, view);
}

/** The aerial with the number of segments that the command line asks for; refuses what only wires have of any other. */
function forced(aerial: AerialDescription, { segments, draw, pattern, impedance }: AerialOptions): AerialDescription {
  for (const [option, given] of Object.entries({ segments, draw, pattern, ...(aerial.kind === 'coil' && { impedance }) }))
    if (given !== undefined && aerial.kind !== 'wires')
      throw new BadFile(
        `--${option} ${given}: the aerial of this file is not described by its wires\n  Write "aerial": { "kind": "wires", "shape": ... }; \`earshot schema\` describes the shapes.`,
      );
  if (segments === undefined || aerial.kind !== 'wires') return aerial;
  return { ...aerial, segments: Number(segments) };
}
