import { type DimensionName, writeForPeople } from '#units';
import type { Path } from '../json/positions.ts';
import type { Report } from '../problem.ts';

/** Values of a list that is read between its points must rise from each to the next. */
export function mustAscend(values: readonly number[], dimension: DimensionName, at: (index: number) => Path, report: Report): void {
  for (let i = 1; i < values.length; i++) {
    if (values[i]! > values[i - 1]!) continue;
    report(
      at(i),
      writeForPeople(values[i]!, dimension),
      `it does not lie above the one before it, ${writeForPeople(values[i - 1]!, dimension)}`,
      'Sort the list from low to high, and give each value once.',
    );
    return;
  }
}
