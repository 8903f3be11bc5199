import { describedCuts } from '#draw';
import type { Figure, WireShape, WiresDescription } from '#engine';
import type { Group } from '../group.ts';

const METHOD = 'geometry';

function figure(name: string, label: string, value: number, unit: string, formula: string): Figure {
  return { name, label, value, unit, method: METHOD, working: { formula, terms: [], source: 'the description' } };
}

/** What to cut: conductors that run on are one piece, those at the feed and at joints are cut. */
export function toCut(description: WiresDescription): Group {
  const cuts = describedCuts(description);
  return {
    heading: 'to cut, without what joints need',
    figures: [],
    remarks: [],
    rows: cuts.map((c) => [
      figure('cut.count', 'pieces', c.count, '1', 'equal conductors counted'),
      figure('cut.length', 'length of each', c.length, 'm', 'sum of the straight pieces'),
      figure('cut.diameter', 'diameter', c.diameter, 'm', 'as described'),
    ]),
    rowNames: { head: 'metal', names: cuts.map((c) => [c.metal, c.shape].filter((t) => t !== '').join(', ')) },
    toTheMillimetre: true,
  };
}

/** Elements of a beam from the back to the front, with their places on the boom; nothing for other shapes. */
export function alongBoom(shape: WireShape): readonly Group[] {
  if (shape.kind !== 'beam') return [];
  const { reflector, driven, directors } = shape;
  const elements = [
    ...(reflector ? [{ name: 'reflector', length: reflector.length, at: -reflector.behind }] : []),
    { name: 'driven element', length: driven.length, at: 0 },
    ...directors.map((d, i) => ({ name: `director ${i + 1}`, length: d.length, at: d.ahead })),
  ];
  const back = elements[0]!.at;
  return [
    {
      heading: 'along the boom',
      figures: [],
      remarks: [],
      rows: elements.map((e) => [
        figure('boom.length', 'length', e.length, 'm', 'end to end'),
        figure('boom.position', 'from the rearmost', e.at - back, 'm', 'from axis to axis'),
      ]),
      rowNames: { head: 'element', names: elements.map((e) => e.name) },
      toTheMillimetre: true,
    },
  ];
}
