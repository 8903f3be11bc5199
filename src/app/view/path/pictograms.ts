/** Small line drawings that stand on the wire, as SVG path data; the origin is where the wire passes, y upwards is negative, about 44 px high. */

/** What the set's aerial looks like from afar. */
export type AerialLook = 'rod' | 'dipole' | 'loop' | 'beam' | 'earth-wire';

export const AERIALS: Readonly<Record<AerialLook, string>> = {
  rod: 'M0,0V-44M-3,-44a3,3 0 1 1 6,0a3,3 0 1 1 -6,0',
  dipole: 'M0,0V-32M-30,-32H-3V-30M30,-32H3V-30',
  loop: 'M-3,0V-6A20,20 0 1 1 3,-6V0',
  beam: 'M0,0V-30M-26,-30H26M-22,-42V-18M-2,-40V-20M20,-38V-22',
  'earth-wire': 'M0,0V-38H34M34,-42V-34M-12,6H12M-8,10H8M-4,14H4',
};

export const MAST = 'M-14,0L0,-52L14,0M-9,-18H9M-6,-30H6M-11.5,-9L6,-30M11.5,-9L-6,-30M0,-52V-60';
/** waves that leave the mast */
export const WAVES = 'M14,-64a12,12 0 0 1 0,16M22,-70a22,22 0 0 1 0,28M31,-76a33,33 0 0 1 0,40';
export const HOUSE = 'M-16,0V-16L0,-28L16,-16V0Z';
/** the part of the wire that a junction takes: triangle and bar, current to the right */
export const JUNCTION = 'M-12,-11L10,0L-12,11ZM10,-12V12';
/** a channel controlled by its gate */
export const CHANNEL = 'M-14,-10H14M-10,-10V0M10,-10V0M-14,-16H14M0,-16V-26';
export const EARPIECE = 'M-10,0V-14A10,10 0 0 1 10,-14V0M-14,-4V-14A14,14 0 0 1 14,-14V-4M-18,-4H-8V6H-18ZM8,-4H18V6H8Z';
export const EAR =
  'M-6,4C-14,-6 -16,-34 4,-36C22,-36 22,-16 12,-8C6,-3 8,8 0,10C-5,11 -7,8 -6,4M-2,-14C-4,-26 4,-30 9,-26C14,-20 6,-16 5,-10';

/**
 * Turns wound of the wire itself, seen from the side: a prolate cycloid from x0 to x1, going on from a wire at the height y.
 *
 * @param turns - as wound; more than nine are drawn as nine
 */
export function windings(x0: number, x1: number, y: number, turns: number): string {
  const n = Math.max(1, Math.min(9, Math.round(turns)));
  const radius = 13;
  const points = 28 * n;
  const lead = 8;
  return Array.from({ length: points + 1 }, (_, k) => {
    const t = k / points;
    const phase = 2 * Math.PI * n * t - Math.PI / 2;
    const x = x0 + lead + (x1 - x0 - 2 * lead) * t + 7 * Math.cos(phase);
    return `${k === 0 ? `H${x0}L` : 'L'}${x.toFixed(1)},${(y - radius - radius * Math.sin(phase)).toFixed(1)}`;
  })
    .join('')
    .concat(`L${x1},${y}`);
}
