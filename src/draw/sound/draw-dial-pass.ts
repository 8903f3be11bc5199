import type { Humps, PassLevel } from '#engine';
import { type CurveOptions, drawCurve } from '../plot/draw-curve.ts';
import type { PlotMark } from '../plot/series.ts';

/** A turn of the dial across a station, and what was heard. Levels as in `PassLevel`, in the unit that is named. */
export interface DialPassPicture {
  readonly title: string;
  readonly points: readonly PassLevel[];
  readonly humps: Humps;
  /** added to `PassLevel.level` to give the level shown [dB] */
  readonly reference: number;
  /** of the levels shown: `dB SPL` */
  readonly unit: string;
  /** the wanted station and its neighbours where the dial meets them; those beyond its ends are left out */
  readonly carriers: readonly { readonly label: string; readonly angle: number }[];
  /** the same by steady calculation, on the scale shown */
  readonly steady?: readonly { readonly angle: number; readonly level: number }[];
  readonly note?: string;
}

const DEGREE = Math.PI / 180;
/** What lies so far below the loudest is cut off at the foot [dB]. */
const DEEP = 60;

/** Level against angle while the dial is turned: the humps either side of the carrier, and the dip on it. */
export function drawDialPass(picture: DialPassPicture, look: Pick<CurveOptions, 'theme' | 'id' | 'width' | 'height'> = {}): string {
  const { humps, reference, unit, carriers, note } = picture;
  // a dial may have been turned either way; a curve is named at its right end
  const points = [...picture.points].sort((a, b) => a.angle - b.angle);
  const steady = picture.steady && [...picture.steady].sort((a, b) => a.angle - b.angle);
  const level = (p: PassLevel): number => p.level + reference;
  const loudest = points.reduce((most, p) => Math.max(most, level(p)), Number.NEGATIVE_INFINITY);
  const floor = loudest - DEEP;
  const shown = (angle: number, y: number) => ({ x: angle / DEGREE, y: y < floor ? null : y });
  const [first, last] = [points[0]?.angle ?? 0, points.at(-1)?.angle ?? 0];
  const within = (angle: number): boolean => angle >= first && angle <= last;
  const said = (p: PassLevel): PlotMark => ({ kind: 'point', x: p.angle / DEGREE, y: level(p), label: `${level(p).toFixed(1)} ${unit}` });
  return drawCurve(
    [
      { label: 'heard while the dial turned', points: points.map((p) => shown(p.angle, level(p))) },
      ...(steady ? [{ label: 'standing, by calculation', points: steady.map((p) => shown(p.angle, p.level)), look: 'dots' as const }] : []),
    ],
    {
      ...look,
      title: picture.title,
      x: { label: 'dial angle', unit: '°' },
      y: { label: 'sound level', unit },
      marks: [
        ...carriers.filter((c) => within(c.angle)).map((c) => ({ kind: 'x' as const, x: c.angle / DEGREE, label: c.label })),
        ...humps.loudest.map(said),
        ...(humps.dip && level(humps.dip) > floor ? [said(humps.dip)] : []),
      ],
      ...(note === undefined ? {} : { note }),
    },
  );
}
