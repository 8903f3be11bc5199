import type { SetDescription, StationReport } from '#engine';

/** Cautions that apply to this set at this place, each once, in the order in which the risk is met. */
export function cautions(set: SetDescription, reports: readonly StationReport[]): readonly string[] {
  const out: string[] = [];
  const exposed = reports.find((r) => r.signal.received.exposure.caution);
  if (exposed)
    out.push(
      `Field of ${exposed.station} here is ${(100 * exposed.signal.received.exposure.ratio).toFixed(0)} % of the public reference level (${exposed.signal.received.exposure.source}): keep away from the mast, ask its operator.`,
    );
  const { aerial } = set;
  const outdoors = aerial.kind !== 'coil' && reports.some((r) => r.signal.received.station !== undefined);
  if (outdoors && (aerial.kind === 'dipole' || aerial.kind === 'electrical' || aerial.kind === 'wire-to-earth'))
    out.push(
      'An outdoor aerial: keep its whole fall clear of overhead lines; lightning protection and bonding follow the local code and are licensed work.',
    );
  if (aerial.kind === 'wire-to-earth' || (aerial.kind === 'whip' && aerial.counterpoise.kind === 'earth-wire'))
    out.push('Earth: use a rod of your own, never the mains earth, a gas pipe or a water pipe.');
  if (reports.some((r) => r.verdict.loud)) out.push('The sound could pass 85 dB(A): take the phones off while tuning, and listen briefly.');
  return out;
}
