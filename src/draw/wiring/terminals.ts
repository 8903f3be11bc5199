import { type PartLabel, partLabel } from '../circuit/label.ts';
import type { Netlist } from '../circuit/netlist.ts';
import { STROKE } from '../circuit/symbol.ts';
import { vector } from '../plane/vector.ts';
import type { Mark } from '../svg/mark.ts';
import { FLIPS, type Footprint, footprint, GRID, type Picture, turnedPicture } from './footprint.ts';
import { line, rectangle, solid } from './pictograms.ts';

const HALF = 3.4;
const SCREW = 2;
const REACH = 6;
const LEAST = 8;
const ASIDE = 2.2;

/** A strip with two screws: to the aerial or its feeder, and to the other half. */
export function terminals(aerial: NonNullable<Netlist['aerial']>): readonly Footprint[] {
  const [hot, cold] = wordsOf(aerial);
  const apart = Math.max(LEAST, GRID * Math.ceil((hot.height + cold.height) / 2 / GRID) + GRID);
  // both screws on the grid
  const y = GRID * Math.ceil(apart / 2 / GRID);
  const screw = (at: number): readonly Mark[] => [
    { kind: 'circle', centre: vector(0, at), radius: SCREW, fill: 'paper', ...STROKE },
    line(vector(-1.3, at - 1.3), vector(1.3, at + 1.3)),
  ];
  const pin = (which: string, net: string, at: number) =>
    ({ part: aerial.name, pin: which, net, lead: 'aerial', at: vector(REACH, at), from: vector(HALF, at) }) as const;
  const picture: Picture = {
    name: aerial.name,
    marks: [...solid(rectangle(-HALF, -y - HALF, HALF, y + HALF), 'faint'), ...screw(-y), ...screw(y)],
    pins: [pin('a', aerial.a, -y), pin('b', aerial.b, y)],
    body: { left: -HALF, right: HALF, top: -y - HALF, bottom: y + HALF },
  };
  return FLIPS.map((turn) => {
    const turned = turnedPicture(picture, turn);
    const right = turned.pins[0]!.at.x < 0;
    return footprint(
      turned,
      [hot, cold].map((label, i) => ({
        label,
        at: vector((right ? 1 : -1) * (HALF + ASIDE), turned.pins[i]!.at.y),
        side: right ? 'right' : 'left',
        names: i === 0 ? 'aerial' : 'aerial foot',
      })),
    );
  });
}

function wordsOf({ plan, label, feeder }: NonNullable<Netlist['aerial']>): readonly [PartLabel, PartLabel] {
  const other = plan.footLabel.lines.length > 0 ? plan.footLabel : partLabel(plan.symbol === 'loop' ? 'its other end' : 'its other half');
  if (!feeder) return [label, plan.symbol === 'impedance' ? partLabel('its other terminal') : other];
  return [partLabel(...label.lines, 'through', ...feeder.lines), partLabel('feeder, other wire')];
}
