import { GivenError } from '#engine';

/**
 * A size on paper that was asked for [mm].
 *
 * @param why - what the room is for
 * @throws GivenError if it is not within its ends
 */
export function checkedSize(path: string, given: number, least: number, most: number, why: string): number {
  if (!(given >= least && given <= most)) throw new GivenError(path, `${given} mm`, why, `Give ${least} to ${most} mm.`);
  return given;
}

/** Greatest side of a sheet [mm]. */
const LARGEST = 2000;

/** The same of a plot. */
export const plotSize = (path: string, given: number, least = 30): number => checkedSize(path, given, least, LARGEST, 'a plot needs room');

/** The same of a drawing with words in it. */
export const drawingSize = (path: string, given: number, least: number): number =>
  checkedSize(path, given, least, LARGEST, 'a drawing needs room for its text');
