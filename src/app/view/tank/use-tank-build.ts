import { useEffect, useState } from 'preact/hooks';
import type { TankBuild } from '#jobs';
import type { Workbench } from '../../model/workbench.ts';

/** What is to be built, worked out anew as the document changes; the last that could be. */
export function useTankBuild(bench: Workbench): TankBuild | null {
  const [build, setBuild] = useState<TankBuild | null>(null);
  const document = bench.document.value;
  useEffect(() => {
    let wanted = true;
    void bench.ask('tankBuild', 'tankBuild', { document }, 'finish').then((answer) => {
      if (wanted && answer?.ok) setBuild(answer.value);
    });
    return () => {
      wanted = false;
    };
  }, [bench, document]);
  return build;
}
