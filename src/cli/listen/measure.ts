import { type ListeningMeasures, measureListening } from '#engine';
import type { Stop } from '../stop.ts';
import type { Plan } from './options.ts';
import type { Prepared } from './prepare.ts';
import { Progress } from './progress.ts';

/** Measures the set at its place of the dial with test programmes; null where a stop is asked for meanwhile. */
export async function measure({ reception, dialled }: Prepared, { seed }: Plan, stop: Stop): Promise<ListeningMeasures | null> {
  const progress = new Progress('measuring');
  const steps = measureListening(reception, { station: dialled.station, angle: dialled.angle, seed });
  try {
    for (let step = steps.next(); ; step = steps.next()) {
      if (step.done) return step.value;
      progress.at(step.value.share);
      await stop.breathe();
      if (stop.asked) return null;
    }
  } finally {
    progress.done();
  }
}
