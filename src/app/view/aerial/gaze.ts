/** From where an aerial is looked at [rad]: the bearing one looks along, and how steeply down. */
export interface Gaze {
  readonly azimuth: number;
  readonly elevation: number;
}

const DEGREE = Math.PI / 180;

/** Askew, so that no wire hides behind another. */
export const START: Gaze = { azimuth: 25 * DEGREE, elevation: 22 * DEGREE };

export const VIEWS: readonly { readonly name: string; readonly gaze: Gaze }[] = [
  { name: 'askew', gaze: START },
  { name: 'looking north', gaze: { azimuth: 0, elevation: 0 } },
  { name: 'looking east', gaze: { azimuth: 90 * DEGREE, elevation: 0 } },
  { name: 'from above', gaze: { azimuth: 0, elevation: 90 * DEGREE } },
];

/** A press that moves less is none of a drag [px]. */
export const LEAST_MOVE = 3;
/** How far a drag over the page turns it [rad/px]. */
const EACH_PIXEL = 0.5 * DEGREE;
const EACH_KEY = 5 * DEGREE;

/** Dragged: what is near goes with the hand. */
export const turned = (from: Gaze, dx: number, dy: number): Gaze =>
  within(from.azimuth + dx * EACH_PIXEL, from.elevation + dy * EACH_PIXEL);

/** By a key; null for one that turns nothing. */
export function keyed({ azimuth, elevation }: Gaze, key: string): Gaze | null {
  const step = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[key];
  if (step) return within(azimuth + step[0]! * EACH_KEY, elevation + step[1]! * EACH_KEY);
  return key === 'Home' ? START : null;
}

function within(azimuth: number, elevation: number): Gaze {
  const turn = 2 * Math.PI;
  return { azimuth: ((azimuth % turn) + turn) % turn, elevation: Math.max(-Math.PI / 2, Math.min(Math.PI / 2, elevation)) };
}

export function words({ azimuth, elevation }: Gaze): string {
  const [bearing, down] = [Math.round(azimuth / DEGREE) % 360, Math.round(elevation / DEGREE)];
  const tilt = down === 0 ? 'level' : `${Math.abs(down)}° ${down > 0 ? 'down' : 'up'}`;
  return `Looking ${String(bearing).padStart(3, '0')}°, ${tilt}. Drag it, or use the arrow keys.`;
}
