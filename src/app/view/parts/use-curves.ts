import { useEffect, useState } from 'preact/hooks';
import type { Answer, CurvesGiven, JobTable } from '#jobs';
import type { Workbench } from '../../model/workbench.ts';

/** Jobs that draw one station with the dial where it stands. */
type CurvesJob = {
  [K in keyof JobTable]: JobTable[K] extends (given: infer G, ...rest: never[]) => unknown ? (CurvesGiven extends G ? K : never) : never;
}[keyof JobTable];
type Worked<K extends keyof JobTable> = Awaited<ReturnType<JobTable[K]>> extends Answer<infer T> ? T : never;

/**
 * Curves of the picked station where the dial stands, worked out anew whenever document, station, dial or `more` change.
 *
 * @param more - further inputs of the job; the same object as long as nothing in it has changed
 * @returns the last that could be worked out; undefined until there is one
 */
export function useCurves<K extends CurvesJob>(
  bench: Workbench,
  job: K,
  more?: Omit<Parameters<JobTable[K]>[0], keyof CurvesGiven>,
): Worked<K> | undefined {
  const [worked, setWorked] = useState<{ readonly value: Worked<K> } | null>(null);
  const [document, station, hand] = [bench.document.value, bench.station.value, bench.hand.value];
  useEffect(() => {
    let wanted = true;
    const given = { ...more, document, station, angle: hand ?? undefined } as Parameters<JobTable[K]>[0];
    // a hand that keeps moving is followed: what runs is finished, and then the latest is asked for
    void bench.ask(job, job, given, 'finish').then((answer) => {
      const told = answer as Answer<Worked<K>> | null;
      if (wanted && told?.ok) setWorked({ value: told.value });
    });
    return () => {
      wanted = false;
    };
  }, [bench, job, document, station, hand, more]);
  return worked?.value;
}
