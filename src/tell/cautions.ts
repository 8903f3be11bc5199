import type { AerialDescription, SetDescription, StationReport } from '#engine';

/** A caution, and where the risk is met. */
export interface Caution {
  readonly at: 'place' | 'aerial' | 'earth' | 'phones';
  readonly words: string;
}

/** For whoever solders. */
export const SOLDERING =
  'The iron is at 350 °C and the joint stays hot: a stand for the iron, nothing that burns near it. Solder spits: wear glasses. Work in moving air, do not breathe the fumes, wash your hands after. Younger builders: with a grown-up.';

/** Cautions that apply to this set at this place, each once, in the order in which the risk is met. */
export const cautions = (set: SetDescription, reports: readonly StationReport[]): readonly string[] =>
  cautionsWhere(set, reports).map((c) => c.words);

/** The same, each with where the risk is met. */
export function cautionsWhere(set: SetDescription, reports: readonly StationReport[]): readonly Caution[] {
  const out: Caution[] = [];
  const exposed = reports.find((r) => r.signal.received.exposure.caution);
  if (exposed)
    out.push({
      at: 'place',
      words: `Field of ${exposed.station} here is ${(100 * exposed.signal.received.exposure.ratio).toFixed(0)} % of the public reference level (${exposed.signal.received.exposure.source}): keep away from the mast, ask its operator.`,
    });
  const { aerial } = set;
  if (putUp(aerial))
    out.push({
      at: 'aerial',
      words:
        'An outdoor aerial: keep its whole fall clear of overhead lines; lightning protection and bonding follow the local code and are licensed work.',
    });
  if (earthed(aerial)) out.push({ at: 'earth', words: 'Earth: use a rod of your own, never the mains earth, a gas pipe or a water pipe.' });
  if (reports.some((r) => r.verdict.loud))
    out.push({ at: 'phones', words: 'The sound could pass 85 dB(A): take the phones off while tuning, and listen briefly.' });
  return out;
}

/** Aerials that are hung or set up, and could fall; a small loop stands on the set, and so does a rod unless radials or a wire to earth are rigged for it. */
function putUp(aerial: AerialDescription): boolean {
  if (aerial.kind === 'wires') {
    const { shape } = aerial;
    return shape.kind === 'rod' ? shape.against.kind === 'radials' || shape.against.kind === 'earth-wire' : shape.kind !== 'round-loop';
  }
  if (aerial.kind === 'whip') return aerial.counterpoise.kind === 'earth-wire';
  return aerial.kind === 'dipole' || aerial.kind === 'electrical' || aerial.kind === 'wire-to-earth';
}

function earthed(aerial: AerialDescription): boolean {
  if (aerial.kind === 'wires') return aerial.shape.kind === 'rod' && aerial.shape.against.kind === 'earth-wire';
  return aerial.kind === 'wire-to-earth' || (aerial.kind === 'whip' && aerial.counterpoise.kind === 'earth-wire');
}
