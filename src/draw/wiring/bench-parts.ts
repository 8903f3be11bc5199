import type { SetDescription } from '#engine';
import { type PartLabel, partLabel } from '../circuit/label.ts';
import type { CircuitPart, Netlist } from '../circuit/netlist.ts';
import { gateLabel } from '../circuit/part-labels.ts';
import { channelPicture } from './channel.ts';
import { BenchCoil } from './coil.ts';
import { earpiecePicture } from './earpiece.ts';
import { FLIPS, type Footprint, footprint, type Picture, QUARTERS, turnedPicture, wordsBeside } from './footprint.ts';
import type { Lead } from './lead.ts';
import { type Lying, lyingPins, PICTOGRAMS } from './pictograms.ts';
import { terminals } from './terminals.ts';
import { transformerPicture } from './transformer.ts';

/** A part with all ways of laying it down. */
export interface BenchPart {
  readonly name: string;
  readonly ways: readonly Footprint[];
  /** its place is at the edge of the board, for something is plugged in there */
  readonly atEdge: boolean;
}

/** Everything on the bench, from the aerial to the ear. */
export function benchParts(set: SetDescription, net: Netlist): readonly BenchPart[] {
  const { aerial, tuning, parallel, couplings, detectorReturn, detector, output, transformer, earpiece } = net;
  const coil = new BenchCoil(net, set.tank.coil);
  return [
    ...(aerial ? [{ name: aerial.name, ways: terminals(aerial), atEdge: true }] : []),
    ...lyingOf(couplings.aerial, 'aerial'),
    { name: 'coil', ways: FLIPS.map((turn) => coil.footprint(turn)), atEdge: false },
    ...tuning.flatMap((part) => lyingOf(part, 'tank')),
    ...lyingOf(parallel, 'tank'),
    ...lyingOf(couplings.detector, 'detector'),
    ...lyingOf(detectorReturn, 'detector'),
    detector.kind === 'channel' && set.detector.kind === 'channel'
      ? turnable(channelPicture(detector, net.gate), channelLabel(detector.label, gateLabel(set.detector)))
      : lying({ ...detector, kind: detector.kind === 'junction' ? 'junction' : 'measured-law' }, 'detector'),
    ...output.map((part) => lying(part, part.name === 'bypass' ? 'detector' : 'audio')),
    ...(transformer
      ? [
          {
            name: 'transformer',
            atEdge: false,
            ways: [...QUARTERS, ...FLIPS.slice(1, 3)].map((turn) => {
              const picture = turnedPicture(transformerPicture(transformer.windings), turn);
              return footprint(picture, [wordsBeside(picture, withSides(transformer.label, picture), 'transformer')]);
            }),
          },
        ]
      : []),
    { ...turnable(earpiecePicture(earpiece), earpiece.label), atEdge: true },
  ];
}

function lyingOf(part: CircuitPart<Lying> | null, lead: Lead): readonly BenchPart[] {
  return part ? [lying(part, lead)] : [];
}

function lying({ name, kind, label, a, b }: CircuitPart<Lying>, lead: Lead): BenchPart {
  const pictogram = PICTOGRAMS[kind];
  const { half, marks } = pictogram;
  const pin = { part: name, lead };
  const pins = lyingPins(pictogram, { ...pin, pin: 'a', net: a }, { ...pin, pin: 'b', net: b });
  return turnable({ name, marks, pins, body: { left: -half.x, right: half.x, top: -half.y, bottom: half.y } }, label);
}

/** A part that can be turned any way. */
function turnable(picture: Picture, label: PartLabel): BenchPart {
  const ways = QUARTERS.map((turn) => {
    const turned = turnedPicture(picture, turn);
    return footprint(turned, [wordsBeside(turned, label, picture.name)]);
  });
  return { name: picture.name, ways, atEdge: false };
}

const channelLabel = (own: PartLabel, gate: PartLabel | null): PartLabel =>
  partLabel(...own.lines, ...(gate ? gate.lines : []), 'gate: middle leg');

/** Which side of a transformer is which, as it lies. */
function withSides(label: PartLabel, { pins, body }: Picture): PartLabel {
  const { at } = pins.find((p) => p.part === 'primary')!;
  const side = at.x < body.left ? 'left' : at.x > body.right ? 'right' : at.y < body.top ? 'top' : 'bottom';
  return partLabel(...label.lines, `primary: ${side}`);
}
