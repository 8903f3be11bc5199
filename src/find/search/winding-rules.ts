/** Rules of the bench for what can be wound. All common practice, no source. */

/** A wire bends round no less than this many times its own thickness, inside. */
export const BEND = 3;
/** A coil that comes off its former holds itself if it is no more than this many wire diameters across. */
export const SELF_HOLDING = 25;
/** Air between a link and the coil that it is pushed into or over, all round [m]. */
export const CLEARANCE = 0.5e-3;
/** Straight wire at each end of a coil [m], besides its radius. */
export const LEAD = 5e-3;
/** Wire between coil and capacitor, both ways [m], besides the coil's diameter. */
export const WIRING = 20e-3;
/** Joints of the circulating path, soldered bright. */
export const JOINTS_SOLDERED = { count: 4, resistance: 0.5e-3 } as const;
/** Across the tank besides all that is counted [F]. */
export const STRAYS = 1e-12;
