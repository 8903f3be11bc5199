/** What is wrong with a row of a table, so that it can be shown where the row stands. */
export interface RowFault<List extends string> {
  /** from 0 */
  readonly row: number;
  readonly list: List;
  readonly given: string;
  readonly why: string;
  readonly mend: string;
}

/** After so many the table is plainly something else. */
export const MOST_FAULTS = 10;

/** What keeps two lists from being a terrain profile; both in metres. Empty if nothing does. */
export function faultsOfProfile(distance: readonly number[], height: readonly number[]): readonly RowFault<'distance' | 'height'>[] {
  if (distance.length !== height.length)
    return [
      {
        row: Math.min(distance.length, height.length),
        list: 'height',
        given: `${distance.length} distances and ${height.length} heights`,
        why: 'each point needs both',
        mend: 'Give a height for every distance.',
      },
    ];
  if (distance.length < 2)
    return [
      {
        row: 0,
        list: 'distance',
        given: `${distance.length} points`,
        why: 'a profile needs two points at least',
        mend: 'Give one at the mast (0), one at the site, and those between.',
      },
    ];
  const faults: RowFault<'distance' | 'height'>[] = [];
  if (distance[0] !== 0)
    faults.push({
      row: 0,
      list: 'distance',
      given: `${distance[0]} m`,
      why: 'a profile starts at the foot of the mast',
      mend: 'Let the first distance be 0.',
    });
  for (let i = 0; i < distance.length && faults.length < MOST_FAULTS; i++) {
    if (i > 0 && !(distance[i]! > distance[i - 1]!))
      faults.push({
        row: i,
        list: 'distance',
        given: `${distance[i]} m`,
        why: `it does not lie beyond the point before it, ${distance[i - 1]} m`,
        mend: 'Sort the points from the mast to the site, and give each distance once.',
      });
    if (Math.abs(height[i]!) > 9000)
      faults.push({
        row: i,
        list: 'height',
        given: `${height[i]} m`,
        why: 'there is no such ground',
        mend: 'Give metres above sea level.',
      });
  }
  return faults;
}
