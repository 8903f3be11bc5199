import { CALIBRATION_FREQUENCY, CALIBRATION_LEVEL, type SoundScale } from '#engine';
import { scaleSentence } from '#tell';
import { formatFigure } from '#units';
import type { Info } from '#wav';
import type { Plan } from './options.ts';
import type { Prepared } from './prepare.ts';

const PROGRAM = 'Earshot';

/** Notes in the file, so that its level can be told long after. */
export function notesOf(name: string, prepared: Prepared, plan: Plan, stoppedAfter: number | null): Info {
  const { station, place, dialled, programme, others, listening } = prepared;
  const { turn } = dialled;
  const { without, seed } = plan;
  const dial = turn
    ? `dial turned from ${formatFigure(turn.from, 'rad')} to ${formatFigure(turn.to, 'rad')} in ${turn.seconds} s`
    : `dial at ${formatFigure(dialled.angle, 'rad')}`;
  const beside = without.has('neighbours') || listening.heard.length < 2 ? '' : ` Other stations: ${others}.`;
  const left = without.size > 0 ? ` Left out: ${[...without].join(', ')}.` : '';
  const stopped = stoppedAfter === null ? '' : ` Stopped after ${stoppedAfter.toFixed(2)} s.`;
  return {
    INAM: `${station.name}, ${formatFigure(station.frequency, 'Hz')}, at ${place.name}: ${name}`,
    ISFT: PROGRAM,
    ICMT: `${scaleSentence(plan.scale)} Programme: ${programme.words}; ${dial}.${beside}${left} Seed ${seed}.${stopped}`,
  };
}

/** Notes in the file of the reference tone. */
export const calibrationNotes = (scale: SoundScale): Info => ({
  INAM: `Reference tone, ${CALIBRATION_FREQUENCY} Hz, ${CALIBRATION_LEVEL} dB SPL`,
  ISFT: PROGRAM,
  ICMT: scaleSentence(scale),
});
