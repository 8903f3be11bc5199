import { useEffect, useState } from 'preact/hooks';
import type { StationFigures } from '#jobs';
import type { Workbench } from '../../model/workbench.ts';

/** The picked station with all its figures, where the dial stands; the last that could be worked out. */
export function useFigures(bench: Workbench): StationFigures | null {
  const [shown, setShown] = useState<StationFigures | null>(null);
  const [document, station, hand] = [bench.document.value, bench.station.value, bench.hand.value];
  useEffect(() => {
    let wanted = true;
    // a hand that keeps moving is followed: what runs is finished, and then the latest is asked for
    void bench.ask('compared', 'figures', { document, station, angle: hand ?? undefined }, 'finish').then((answer) => {
      if (wanted && answer?.ok) setShown(answer.value[0] ?? null);
    });
    return () => {
      wanted = false;
    };
  }, [bench, document, station, hand]);
  return shown;
}
