import type { SetDescription } from '#engine';
import { lengthText } from '../aerial/length-text.ts';
import { type AerialPlan, aerialPlan } from './aerial-plan.ts';
import type { PartLabel } from './label.ts';
import { partLabel } from './label.ts';
import { joinedAt } from './levels.ts';
import {
  capacitorLabels,
  coilLabel,
  detectorLabel,
  earpieceLabel,
  gateWire,
  type KnownValues,
  linkLabel,
  tapText,
  transformerLabel,
} from './part-labels.ts';
import { partValue } from './part-value.ts';

/** Name of the common line. */
export const COMMON = 'common';
/** Name of the line at the hot end of the coil. */
const TOP = 'top';

/** Drawn parts with two ends. */
export type TwoEnded = 'capacitor' | 'variable-capacitor' | 'resistor' | 'choke' | 'junction' | 'measured-law' | 'winding' | 'earpiece';

/** A part, and the lines its two ends are on; named as in the engine's network. */
export interface CircuitPart<K extends string = TwoEnded> {
  readonly name: string;
  readonly kind: K;
  readonly label: PartLabel;
  readonly a: string;
  readonly b: string;
}

/** Something soldered to a turn of the coil below its top. */
export interface CoilTap {
  /** from the cold end */
  readonly turns: number;
  readonly net: string;
  readonly roles: readonly ('aerial' | 'detector')[];
  readonly text: string;
}

/**
 * What a set is made of and what is joined to what, without what only the model knows (losses, strays): every drawing of the circuit reads it.
 * Two ends are joined where they name the same line.
 */
export interface Netlist {
  /** null where the coil is the aerial; `a` is its terminal towards the set */
  readonly aerial: (CircuitPart<'aerial'> & { readonly plan: AerialPlan; readonly feeder: PartLabel | null }) | null;
  readonly coil: CircuitPart<'coil'> & { readonly taps: readonly CoilTap[] };
  readonly links: readonly (CircuitPart<'winding'> & { readonly turns: number })[];
  /** variable capacitor, then the one in series with it */
  readonly tuning: readonly CircuitPart<'variable-capacitor' | 'capacitor'>[];
  readonly parallel: CircuitPart<'capacitor'> | null;
  /** capacitors through which aerial and detector are joined */
  readonly couplings: { readonly aerial: CircuitPart<'capacitor'> | null; readonly detector: CircuitPart<'capacitor'> | null };
  readonly detectorReturn: CircuitPart<'resistor'> | null;
  readonly detector: CircuitPart<'junction' | 'measured-law' | 'channel'>;
  /** line of a channel's gate; null where it has none, or is driven by something else */
  readonly gate: string | null;
  /** after the detector, in order, up to the transformer */
  readonly output: readonly CircuitPart<'capacitor' | 'resistor' | 'choke'>[];
  readonly transformer: { readonly label: PartLabel; readonly windings: readonly CircuitPart<'winding'>[] } | null;
  readonly earpiece: CircuitPart<'earpiece'>;
}

export function netlistOf(set: SetDescription, known: KnownValues = {}): Netlist {
  const { tank, phones, detector } = set;
  const taps = coilTaps(set);
  const links: Netlist['links'][number][] = [];
  const couplings: { aerial: CircuitPart<'capacitor'> | null; detector: CircuitPart<'capacitor'> | null } = {
    aerial: null,
    detector: null,
  };
  /** line that aerial or detector is on, with what joins it to the coil */
  const lineOf = (role: 'aerial' | 'detector'): string => {
    const { coupling, tap } = joinedAt(set, role);
    if (tap !== null) return tapNet(tap);
    if (coupling?.kind === 'link') {
      links.push({ name: `${role} link`, kind: 'winding', label: linkLabel(role, coupling), a: role, b: COMMON, turns: coupling.turns });
      return role;
    }
    if (coupling?.kind === 'series-capacitor') {
      const label = partLabel('coupling', partValue(coupling.capacitance, 'F'));
      couplings[role] = { name: `${role} coupling`, kind: 'capacitor', label, a: TOP, b: role };
      return role;
    }
    return TOP;
  };
  const plan = aerialPlan(set.aerial);
  const feeder = set.aerial.feeder;
  const aerial = plan && {
    name: feeder ? 'feeder' : 'aerial',
    kind: 'aerial' as const,
    label: plan.label,
    plan,
    feeder: feeder ? partLabel('feeder', lengthText(feeder.length), partValue(feeder.impedance, 'ohm')) : null,
    a: lineOf('aerial'),
    b: COMMON,
  };
  const labels = capacitorLabels(tank);
  const between = labels.series ? 'within the tuning' : COMMON;
  const line = lineOf('detector');
  const audio = outputOf(set);
  const tied = detector.kind === 'channel' ? gateWire(detector) : null;
  return {
    aerial,
    coil: { name: 'coil', kind: 'coil', label: coilLabel(set, known), a: TOP, b: COMMON, taps },
    links,
    tuning: [
      { name: 'capacitor', kind: 'variable-capacitor', label: labels.variable, a: TOP, b: between },
      ...(labels.series ? [{ name: 'series capacitor', kind: 'capacitor' as const, label: labels.series, a: between, b: COMMON }] : []),
    ],
    parallel: labels.parallel && { name: 'parallel capacitor', kind: 'capacitor', label: labels.parallel, a: TOP, b: COMMON },
    couplings,
    detectorReturn:
      tank.detectorReturn === undefined
        ? null
        : {
            name: 'detector return',
            kind: 'resistor',
            label: partLabel('return', partValue(tank.detectorReturn, 'ohm')),
            a: line,
            b: COMMON,
          },
    detector: {
      name: 'detector',
      kind: detector.kind === 'table' ? 'measured-law' : detector.kind,
      label: detectorLabel(detector),
      a: line,
      b: OUTPUT,
    },
    gate: tied === null ? null : tied === 'tank' ? line : OUTPUT,
    output: audio.parts,
    transformer: phones.transformer
      ? {
          label: transformerLabel(phones.transformer),
          windings: [
            { name: 'primary', kind: 'winding', label: partLabel('primary'), a: audio.line, b: COMMON },
            { name: 'secondary', kind: 'winding', label: partLabel('secondary'), a: 'ear', b: COMMON },
          ],
        }
      : null,
    earpiece: {
      name: 'earpiece',
      kind: 'earpiece',
      label: earpieceLabel(phones),
      a: phones.transformer ? 'ear' : audio.line,
      b: COMMON,
    },
  };
}

const OUTPUT = 'output';
const tapNet = (turns: number): string => `tap ${turns}`;

function coilTaps(set: SetDescription): readonly CoilTap[] {
  const joined = (['aerial', 'detector'] as const).map((role) => ({ role, tap: joinedAt(set, role).tap }));
  const turns = [...new Set(joined.flatMap(({ tap }) => (tap === null ? [] : [tap])))].sort((a, b) => b - a);
  return turns.map((t) => ({
    turns: t,
    net: tapNet(t),
    roles: joined.flatMap(({ role, tap }) => (tap === t ? [role] : [])),
    text: tapText(set.tank, t),
  }));
}

/** Parts across the output and the one in its line, and the line they end on. */
function outputOf({ phones }: SetDescription): { readonly parts: Netlist['output']; readonly line: string } {
  const { bypass, load, choke, blocking } = phones;
  const across = { a: OUTPUT, b: COMMON };
  const parts: CircuitPart<'capacitor' | 'resistor' | 'choke'>[] = [];
  if (bypass > 0) parts.push({ name: 'bypass', kind: 'capacitor', label: partLabel('bypass', partValue(bypass, 'F')), ...across });
  if (load !== undefined) parts.push({ name: 'load', kind: 'resistor', label: partLabel('load', partValue(load, 'ohm')), ...across });
  if (choke) {
    const label = partLabel('choke', partValue(choke.inductance, 'H'), partValue(choke.resistance, 'ohm'));
    parts.push({ name: 'choke', kind: 'choke', label, ...across });
  }
  if (blocking === undefined) return { parts, line: OUTPUT };
  const label = partLabel('blocking', partValue(blocking, 'F'));
  parts.push({ name: 'blocking', kind: 'capacitor', label, a: OUTPUT, b: 'behind the blocking capacitor' });
  return { parts, line: 'behind the blocking capacitor' };
}
