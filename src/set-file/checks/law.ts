import { MOST_FAULTS, type RowFault } from './profile.ts';

const FEWEST_ROWS = 5;
type LawFault = RowFault<'voltage' | 'current'>;

/** What keeps two lists from being the law of a detector without a battery; volts and amperes. Empty if nothing does. */
export function faultsOfLaw(voltage: readonly number[], current: readonly number[]): readonly LawFault[] {
  const rows = voltage.length;
  if (rows !== current.length)
    return [
      {
        row: Math.min(rows, current.length),
        list: 'current',
        given: `${rows} voltages and ${current.length} currents`,
        why: 'each row needs both',
        mend: 'Give one current to each voltage.',
      },
    ];
  if (rows < FEWEST_ROWS)
    return [
      {
        row: 0,
        list: 'voltage',
        given: `${rows} rows`,
        why: `a law needs ${FEWEST_ROWS} rows at least`,
        mend: 'Measure from some -0.3 V to 0.3 V in steps of 10 mV, finer about zero.',
      },
    ];
  const faults = voltage.flatMap((_, k) => faultsOfRow(voltage, current, k)).slice(0, MOST_FAULTS);
  return faults.length > 0 ? faults : faultsAboutZero(voltage, current);
}

function faultsOfRow(voltage: readonly number[], current: readonly number[], k: number): LawFault[] {
  const v = voltage[k]!;
  const i = current[k]!;
  const faults: LawFault[] = [];
  if (k > 0 && !(v > voltage[k - 1]!))
    faults.push({
      row: k,
      list: 'voltage',
      given: `${v} V`,
      why: `row ${k + 1} does not lie above the row before it, ${voltage[k - 1]} V`,
      mend: 'Sort the rows by voltage, and give each voltage once.',
    });
  if (k > 0 && !(i >= current[k - 1]!))
    faults.push({
      row: k,
      list: 'current',
      given: `${i} A`,
      why: `row ${k + 1} falls below the row before it, ${current[k - 1]} A, and a law that falls has no single answer`,
      mend: 'Measure it again, or smooth the readings.',
    });
  if (i * v < 0 || (v === 0 && i !== 0))
    faults.push({
      row: k,
      list: 'current',
      given: `${i} A`,
      why: `row ${k + 1} would deliver power at ${v} V, which a detector without a battery cannot`,
      mend: "Subtract the meters' offset, so that the current is zero at 0 V.",
    });
  return faults;
}

/** Weak signals live about 0 V: the table must reach to both sides of it, and move there. */
function faultsAboutZero(voltage: readonly number[], current: readonly number[]): LawFault[] {
  const last = voltage.length - 1;
  if (voltage[0]! >= 0 || voltage[last]! <= 0)
    return [
      {
        row: voltage[0]! >= 0 ? 0 : last,
        list: 'voltage',
        given: `${voltage[0]} V to ${voltage[last]} V`,
        why: 'the table must reach to both sides of 0 V, where weak signals work',
        mend: 'Measure some rows in the other direction too.',
      },
    ];
  const after = voltage.findIndex((v) => v > 0);
  const before = voltage[after - 1] === 0 ? after - 2 : after - 1;
  if (current[after]! > 0 && current[before]! < 0) return [];
  return [
    {
      row: current[after]! > 0 ? before : after,
      list: 'current',
      given: '0 A',
      why: `the table is flat about 0 V (rows ${before + 1} to ${after + 1}), so it says nothing about weak signals`,
      mend: 'Measure with a finer ammeter, or leave out the rows in which it did not move.',
    },
  ];
}
