import { figuresText, valueText } from '../plot/number-text.ts';
import type { DialScale, DialStation, PointerSense, Travel } from './dial-scale.ts';

export const degreesText = (angle: number): string => `${figuresText(Math.round((angle * 1800) / Math.PI) / 10, 4)}°`;

/** Stations the dial reaches, and those it does not. */
export function onDial(
  scale: DialScale,
  travel: Travel,
): { readonly here: readonly DialStation[]; readonly beyond: readonly DialStation[] } {
  const reached = (s: DialStation) => s.points.some((p) => within(travel.ofAngle(p.angle)));
  return { here: scale.stations.filter(reached), beyond: scale.stations.filter((s) => !reached(s)) };
}

export const within = (share: number): boolean => share >= -1e-6 && share <= 1 + 1e-6;

/** Name and carrier, as they stand on the dial; a name that ends in the carrier's figures keeps them. */
export function stationText(s: DialStation): string {
  const figures = figuresText(s.frequency / (s.frequency < 3e6 ? 1e3 : 1e6), 6);
  return s.label.includes(figures) ? s.label : `${s.label} ${figures}`;
}

/** Sentences below a dial: how to read the marks, and what it does not reach. */
export function keyWords(scale: DialScale, travel: Travel): readonly string[] {
  const { here, beyond } = onDial(scale, travel);
  const two = here.some((s) => s.points.length > 1);
  return [
    ...(here.length === 0
      ? []
      : [
          two
            ? 'A station has a mark where it is loudest; a broken one on the other side of its carrier, where it is heard again.'
            : 'A station has a mark where it is loudest.',
        ]),
    ...(beyond.length === 0 ? [] : [`Not on this dial: ${beyond.map(stationText).join(', ')}.`]),
  ];
}

/** The dial in words, for those who do not see it. */
export function dialDescription(scale: DialScale, travel: Travel, sense: PointerSense, right: string): string {
  const { here, beyond } = onDial(scale, travel);
  const { range } = travel;
  const stations = here.map((s) => `${stationText(s)} at ${s.points.map((p) => degreesText(p.angle)).join(' and ')}`);
  return [
    `Degrees of the capacitor from ${degreesText(travel.ends[0])} to ${degreesText(travel.ends[1])}, counted from its least capacitance.`,
    range === null
      ? 'No frequency is tuned to.'
      : `${valueText(range.lowest, 'Hz')} to ${valueText(range.highest, 'Hz')}, ${sense} ${right}.`,
    ...(stations.length > 0 ? [`Stations: ${stations.join('; ')}.`] : []),
    ...(beyond.length > 0 ? [`Not on this dial: ${beyond.map(stationText).join(', ')}.`] : []),
  ].join(' ');
}
