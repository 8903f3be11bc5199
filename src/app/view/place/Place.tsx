import { Groups } from '../parts/Groups.tsx';
import { Sized } from '../parts/Sized.tsx';
import { useSteady } from '../parts/use-steady.ts';
import { useStageGroups } from '../stage/Stage.tsx';
import type { ViewProps } from '../view-props.ts';
import { Around } from './Around.tsx';
import { PlaceForm } from './PlaceForm.tsx';
import { Profile } from './Profile.tsx';
import { StationTable } from './StationTable.tsx';
import { Steps } from './Steps.tsx';
import { TableExchange } from './TableExchange.tsx';
import { TakeTerrain } from './TakeTerrain.tsx';

/** The place: which stations are around, how strong each arrives, and why. */
export function Place({ desk, editing }: ViewProps) {
  const { bench } = desk;
  const curves = useSteady(bench, 'placeCurves');
  const groups = useStageGroups(bench, 'place');
  const stations = curves?.stations ?? [];
  const picked = stations[bench.station.value];
  const pick = (index: number): void => {
    bench.station.value = index;
  };
  return (
    <div class="view with-form">
      <div>
        <PlaceForm desk={desk} editing={editing} />
        <TableExchange desk={desk} />
      </div>
      <div>
        <div class="pictures">
          <section aria-labelledby="around-heading">
            <h2 id="around-heading">Stations around you</h2>
            <Sized>
              {(width) => stations.length > 0 && <Around stations={stations} picked={bench.station.value} onPick={pick} width={width} />}
            </Sized>
          </section>
          <section aria-labelledby="fields-heading">
            <h2 id="fields-heading">How strong they arrive</h2>
            <StationTable stations={stations} picked={bench.station.value} onPick={pick} />
            {picked && <Steps station={picked} />}
          </section>
          {curves && picked && (
            <section aria-labelledby="profile-heading" class="broad">
              <h2 id="profile-heading">The ground in between</h2>
              <Sized>{(width) => <Profile station={picked} siteHeight={curves.site.height} width={width} />}</Sized>
              <TakeTerrain key={picked.name} desk={desk} index={bench.station.value} name={picked.name} />
            </section>
          )}
        </div>
        <Groups groups={groups} />
      </div>
    </div>
  );
}
