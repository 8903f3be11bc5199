import { GivenError, type Modulation, type Reception, scaledLosses } from '#engine';

/** Something to try on the slope without building it or asking the station; all else stays as it is. */
export interface WhatIf {
  /** the station's peak deviation [Hz], or its depth of modulation up to 1 */
  readonly modulation?: number | undefined;
  /** every loss of the tank's parts so many times as great */
  readonly losses?: number | undefined;
}

/** Within these the picture still shows something [times]. */
export const LEAST_LOSSES = 0.05;
export const MOST_LOSSES = 50;

/** The reception as it would be; the very same where nothing is tried. */
export function supposed(reception: Reception, station: number, { modulation, losses }: WhatIf): Reception {
  const { receiver, signals } = reception;
  if (modulation === undefined && losses === undefined) return reception;
  return {
    ...reception,
    receiver: losses === undefined ? receiver : { ...receiver, tank: scaledLosses(receiver.tank, checkedLosses(losses)) },
    signals: signals.map((s, k) => {
      if (k !== station || modulation === undefined) return s;
      const { received } = s;
      return {
        ...s,
        received: { ...received, station: { ...received.station, modulation: modulatedBy(received.station.modulation, modulation) } },
      };
    }),
  };
}

function modulatedBy(modulation: Modulation, by: number): Modulation {
  const most = modulation.kind === 'fm' ? 1e6 : 1;
  if (!(by > 0 && by <= most))
    throw new GivenError('whatIf.modulation', `${by}`, 'a station is modulated by more than nothing', `Give more than 0, up to ${most}.`);
  return modulation.kind === 'fm' ? { ...modulation, deviation: by } : { ...modulation, depth: by };
}

function checkedLosses(losses: number): number {
  if (!(losses >= LEAST_LOSSES && losses <= MOST_LOSSES))
    throw new GivenError('whatIf.losses', `${losses}`, 'so many times the losses show nothing', `Give ${LEAST_LOSSES} to ${MOST_LOSSES}.`);
  return losses;
}
