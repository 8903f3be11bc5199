import type { Coupling, DetectorDescription, PhonesDescription, SetDescription, TankDescription } from '#engine';
import { turnsWords } from '../coil/turns-words.ts';
import { figuresText } from '../plot/number-text.ts';
import { type PartLabel, partLabel } from './label.ts';
import { partRange, partValue } from './part-value.ts';

/** What the description of a set does not hold but a reader wants beside its symbols. */
export interface KnownValues {
  /** of a coil given by its shape [H] */
  readonly inductance?: number;
}

export function coilLabel(set: Pick<SetDescription, 'aerial' | 'tank'>, known: KnownValues): PartLabel {
  const { coil } = set.tank;
  const inductance = coil.kind === 'electrical' ? coil.inductance : known.inductance;
  return partLabel(
    set.aerial.kind === 'coil' ? 'coil, which is the aerial' : 'coil',
    ...(inductance === undefined ? [] : [partValue(inductance, 'H')]),
    ...(coil.kind === 'geometry' ? [turnsWords(coil.turns)] : []),
  );
}

export const linkLabel = (role: string, c: Extract<Coupling, { kind: 'link' }>): PartLabel =>
  partLabel(`${role} link`, turnsWords(c.turns));

/** A tap in turns; of a coil that is counted as one turn, as a share. */
export function tapText(tank: TankDescription, turns: number): string {
  const whole = tank.coil.turns;
  return tank.coil.kind === 'electrical' && whole === 1 ? `tap ${figuresText(turns, 3)} of the coil` : `tap ${turnsWords(turns)}`;
}

export function capacitorLabels({ capacitor: c }: TankDescription) {
  return {
    variable: partLabel('tuning', partRange(c.minimum, c.maximum, 'F')),
    series: c.series === undefined ? null : partLabel('in series', partValue(c.series, 'F')),
    parallel: c.parallel ? partLabel('in parallel', partValue(c.parallel, 'F')) : null,
  };
}

export function detectorLabel(d: DetectorDescription): PartLabel {
  switch (d.kind) {
    case 'junction':
      return partLabel('detector', `Is ${partValue(d.saturationCurrent, 'A')}`);
    case 'channel':
      return partLabel('detector', `channel, threshold ${partValue(d.threshold, 'V')}`);
    case 'table':
      return partLabel('detector', 'by its measured law');
  }
}

/** What drives a channel's gate where that is no plain wire; null where it is. */
export function gateLabel(d: Extract<DetectorDescription, { kind: 'channel' }>): PartLabel | null {
  if (gateWire(d) !== null) return null;
  return partLabel(
    `gate: ${figuresText(d.gateDrive, 3)} of the RF`,
    ...(d.gateBias === 0 ? [] : [`bias ${partValue(d.gateBias, 'V')} on the output`]),
  );
}

/** Where a channel's gate is tied: to the tank's side, to the output, or elsewhere (null). */
export function gateWire(d: Extract<DetectorDescription, { kind: 'channel' }>): 'tank' | 'output' | null {
  if (d.gateBias !== 0) return null;
  return d.gateDrive === 1 ? 'tank' : d.gateDrive === 0 ? 'output' : null;
}

export function earpieceLabel({ earpiece: e }: PhonesDescription): PartLabel {
  const own =
    e.kind === 'piezo'
      ? `piezo, ${partValue(e.capacitance, 'F')}`
      : `magnetic, ${partValue(e.resistance, 'ohm')}${e.inductance > 0 ? `, ${partValue(e.inductance, 'H')}` : ''}`;
  return partLabel(e.name.trim() === '' ? (e.ears === 2 ? 'phones' : 'earpiece') : e.name, own);
}

export function transformerLabel(t: NonNullable<PhonesDescription['transformer']>): PartLabel {
  const ratio = t.ratio >= 1 ? `${Number(t.ratio.toPrecision(3))} : 1` : `1 : ${Number((1 / t.ratio).toPrecision(3))}`;
  return partLabel('transformer', ratio, partValue(t.primaryInductance, 'H'));
}
