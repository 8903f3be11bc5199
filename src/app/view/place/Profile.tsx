import { useMemo } from 'preact/hooks';
import { drawProfile } from '#draw';
import type { StationField } from '#jobs';
import { Plot } from '../parts/Plot.tsx';

interface Props {
  readonly station: StationField;
  readonly siteHeight: number;
  readonly width: number;
}

/** The ground between the mast and here, where its profile is given. */
export function Profile({ station, siteHeight, width }: Props) {
  const { profile, mastHeight, frequency, name } = station;
  const drawn = useMemo(() => {
    if (!profile) return null;
    const svg = drawProfile(
      { profile, mastHeight, siteHeight, frequency },
      { title: `From ${name} to here`, mast: name, width, theme: 'host', id: 'profile-plot' },
    );
    const points = Array.from(profile.distance, (x, i) => ({ x, y: profile.height[i]! }));
    const curves = {
      series: [{ label: 'ground', points }],
      x: { label: 'distance from the mast', unit: 'm' },
      y: { label: 'height', unit: 'm' },
    };
    return { svg, curves };
  }, [profile, mastHeight, siteHeight, frequency, name, width]);
  if (!drawn)
    return (
      <p class="about">
        No heights are given between {name} and here, so the field is that over ground without hills in the way. If there are any, read the
        heights off a map and give them as the station’s terrain: distances from the mast and heights above the sea.
      </p>
    );
  return <Plot svg={drawn.svg} name={`Ground from ${name}`} curves={drawn.curves} />;
}
