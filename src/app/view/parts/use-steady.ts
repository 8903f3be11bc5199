import { useEffect, useState } from 'preact/hooks';
import type { Answer, Document, JobTable } from '#jobs';
import type { Workbench } from '../../model/workbench.ts';

/** Jobs whose answer does not depend on where the dial stands. */
type SteadyJob = 'placeCurves' | 'aerialCurves' | 'phonesCurves';
type Worked<K extends SteadyJob> = Awaited<ReturnType<JobTable[K]>> extends Answer<infer T> ? T : never;

/**
 * What a job makes of the document and the picked station, worked out anew when they change.
 *
 * @returns the last that could be worked out; undefined until there is one
 */
export function useSteady<K extends SteadyJob>(bench: Workbench, job: K): Worked<K> | undefined {
  const [worked, setWorked] = useState<{ readonly value: Worked<K> } | null>(null);
  const [document, station] = [bench.document.value, bench.station.value];
  useEffect(() => {
    let wanted = true;
    const given: { readonly document: Document; readonly station: number } = { document, station };
    // a slider that keeps moving is followed: what runs is finished, and then the latest is asked for
    void bench.ask(job, job, given, 'finish').then((answer) => {
      const told = answer as Answer<Worked<K>> | null;
      if (wanted && told?.ok) setWorked({ value: told.value });
    });
    return () => {
      wanted = false;
    };
  }, [bench, job, document, station]);
  return worked?.value;
}
