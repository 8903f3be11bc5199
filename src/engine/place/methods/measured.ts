import { term } from '../../figure.ts';
import { fieldLevel } from '../free-space.ts';
import { freeSpaceStep, HORIZONTAL_SHARE, type MethodField, type Situation } from './method-field.ts';

/** The field the user measured, set against free space so that the ladder can start from the mast. */
export function measuredMethod(situation: Situation, measured: number): MethodField {
  const free = freeSpaceStep(situation);
  return {
    method: 'measured',
    steps: [
      free,
      {
        name: 'measured',
        label: 'measured against free space',
        decibels: fieldLevel(measured) - free.decibels,
        source: 'measured by the user',
        working: () => ({
          formula: '20 log10(1e6 E) - E0',
          terms: [
            term('E', 'field measured at the site', measured, 'V/m rms'),
            term('E0', 'free-space field', free.decibels, 'dB re 1 uV/m'),
          ],
          source: 'measured by the user',
          holds: 'where the aerial stands: no wall is counted again',
        }),
      },
    ],
    horizontalShare: situation.station.frequency < 30e6 ? 0 : HORIZONTAL_SHARE[situation.station.polarisation],
    elevation: situation.path.elevation,
    nearness: 1,
    remarks: [],
  };
}
