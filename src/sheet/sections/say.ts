import { formatFigure } from '#units';

/** Below it stations are named by kilohertz. */
const MEDIUM_WAVE = 3e6;
export const DEGREE = Math.PI / 180;

/** A carrier as it stands on dials: `99.2 MHz`, `909 kHz`. */
export const frequencyText = (hertz: number): string =>
  hertz < MEDIUM_WAVE ? `${Number((hertz / 1e3).toPrecision(5))} kHz` : formatFigure(hertz, 'Hz', 5);

/** What a set tunes to: no finer than a hand can set it. */
export const tunedText = (hertz: number): string =>
  hertz < MEDIUM_WAVE ? `${Number((hertz / 1e3).toPrecision(4))} kHz` : formatFigure(hertz, 'Hz', 4);

/** An angle of the capacitor, to a tenth of a degree. */
export const degrees = (angle: number): string => `${(angle / DEGREE).toFixed(1)}°`;

export const ohms = (r: number): string => formatFigure(r, 'ohm', 3);
export const farads = (c: number): string => formatFigure(c, 'F', 3);
export const henries = (l: number): string => formatFigure(l, 'H', 3);
