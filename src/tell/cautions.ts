import type { AerialDescription, SetDescription, StationReport } from '#engine';

/** Cautions that apply to this set at this place, each once, in the order in which the risk is met. */
export function cautions(set: SetDescription, reports: readonly StationReport[]): readonly string[] {
  const out: string[] = [];
  const exposed = reports.find((r) => r.signal.received.exposure.caution);
  if (exposed)
    out.push(
      `Field of ${exposed.station} here is ${(100 * exposed.signal.received.exposure.ratio).toFixed(0)} % of the public reference level (${exposed.signal.received.exposure.source}): keep away from the mast, ask its operator.`,
    );
  const { aerial } = set;
  if (putUp(aerial))
    out.push(
      'An outdoor aerial: keep its whole fall clear of overhead lines; lightning protection and bonding follow the local code and are licensed work.',
    );
  if (earthed(aerial)) out.push('Earth: use a rod of your own, never the mains earth, a gas pipe or a water pipe.');
  if (reports.some((r) => r.verdict.loud)) out.push('The sound could pass 85 dB(A): take the phones off while tuning, and listen briefly.');
  return out;
}

/** Aerials that are hung or set up, and could fall; a rod or a small loop stands on the set. */
function putUp(aerial: AerialDescription): boolean {
  if (aerial.kind === 'wires') return aerial.shape.kind !== 'rod' && aerial.shape.kind !== 'round-loop';
  return aerial.kind === 'dipole' || aerial.kind === 'electrical' || aerial.kind === 'wire-to-earth';
}

function earthed(aerial: AerialDescription): boolean {
  if (aerial.kind === 'wires') return aerial.shape.kind === 'rod' && aerial.shape.against.kind === 'earth-wire';
  return aerial.kind === 'wire-to-earth' || (aerial.kind === 'whip' && aerial.counterpoise.kind === 'earth-wire');
}
