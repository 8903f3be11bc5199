import { type Box, boxCorners } from '../plane/box.ts';
import type { Vector } from '../plane/vector.ts';
import { type Attributes, element, coordinate as round } from './element.ts';
import { escapeXml } from './escape.ts';
import { type Role, shade, type Theme } from './palette.ts';
import { type Speck, specksPath } from './specks.ts';
import { textWidth } from './text-width.ts';

interface Stroke {
  readonly stroke: Role;
  /** [mm] */
  readonly width: number;
  readonly dash?: readonly number[];
  readonly cap?: 'round';
}

/** Says in the file what a mark is, for tests and for pages that react to it: written as `data-` attributes. */
export type Labels = Readonly<Record<string, string | number>>;

/** One thing drawn, in millimetres of paper. */
export type Mark = { readonly labels?: Labels } & (
  | ({ readonly kind: 'line'; readonly from: Vector; readonly to: Vector } & Stroke)
  | ({ readonly kind: 'polyline'; readonly points: readonly Vector[] } & Stroke)
  | { readonly kind: 'area'; readonly points: readonly Vector[]; readonly fill: Role; readonly opacity?: number }
  | ({ readonly kind: 'circle'; readonly centre: Vector; readonly radius: number; readonly fill?: Role } & Stroke)
  | ({ readonly kind: 'arc'; readonly centre: Vector; readonly radius: number } & Stroke)
  | ({ readonly kind: 'specks'; readonly shape: Speck; readonly points: readonly Vector[]; readonly radius: number } & Stroke)
  | TextMark
);

export interface TextMark {
  readonly kind: 'text';
  /** on the base line: its start, middle or end, as `anchor` says */
  readonly at: Vector;
  readonly text: string;
  readonly size: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** [rad], clockwise */
  readonly angle: number;
  readonly fill: Role;
  /** a dimension that is not drawn to scale is underlined (ISO 129-1) */
  readonly underlined?: boolean;
  readonly labels?: Labels;
}

/** Heights above and below the base line, in ems. */
const ASCENT = 0.8;
const DESCENT = 0.24;

/** Room a text takes. */
export function textBox(t: Pick<TextMark, 'at' | 'text' | 'size' | 'anchor' | 'angle'>): Box {
  const width = textWidth(t.text, t.size);
  const along = t.anchor === 'middle' ? 0 : t.anchor === 'start' ? width / 2 : -width / 2;
  const up = ((ASCENT - DESCENT) / 2) * t.size;
  const [c, s] = [Math.cos(t.angle), Math.sin(t.angle)];
  return {
    centre: { x: t.at.x + along * c + up * s, y: t.at.y + along * s - up * c },
    halfWidth: width / 2,
    halfHeight: ((ASCENT + DESCENT) / 2) * t.size,
    angle: t.angle,
  };
}

/** Points that bound a mark, its thickness left out. */
export function outline(m: Mark): readonly Vector[] {
  switch (m.kind) {
    case 'line':
      return [m.from, m.to];
    case 'polyline':
    case 'area':
    case 'specks':
      return m.points;
    case 'circle':
      return [
        { x: m.centre.x - m.radius, y: m.centre.y - m.radius },
        { x: m.centre.x + m.radius, y: m.centre.y + m.radius },
      ];
    case 'arc':
      return [
        { x: m.centre.x - m.radius, y: m.centre.y - m.radius },
        { x: m.centre.x + m.radius, y: m.centre.y },
      ];
    case 'text':
      return boxCorners(textBox(m));
  }
}

/** A mark as markup, moved by `shift`. An arc is the upper half of a circle. */
export function render(m: Mark, shift: Vector, theme: Theme): string {
  const labels = Object.fromEntries(Object.entries(m.labels ?? {}).map(([k, v]) => [`data-${k}`, `${v}`]));
  const x = (p: Vector) => p.x + shift.x;
  const y = (p: Vector) => p.y + shift.y;
  const path = (points: readonly Vector[]) => points.map((p) => `${round(x(p))},${round(y(p))}`).join(' ');
  switch (m.kind) {
    case 'line':
      return element('line', { x1: x(m.from), y1: y(m.from), x2: x(m.to), y2: y(m.to), ...stroke(m, theme), ...labels });
    case 'polyline':
      return element('polyline', { points: path(m.points), fill: 'none', 'stroke-linejoin': 'round', ...stroke(m, theme), ...labels });
    case 'area':
      return element('polygon', { points: path(m.points), ...fill(m.fill, theme), 'fill-opacity': m.opacity, ...labels });
    case 'circle':
      return element('circle', {
        cx: x(m.centre),
        cy: y(m.centre),
        r: m.radius,
        ...stroke(m, theme, m.fill),
        ...(m.fill ? { fill: shade(m.fill, theme) } : { fill: 'none' }),
        ...labels,
      });
    case 'arc': {
      const r = round(m.radius);
      const d = `M${round(x(m.centre) - m.radius)},${round(y(m.centre))}A${r},${r} 0 0 1 ${round(x(m.centre) + m.radius)},${round(y(m.centre))}`;
      return element('path', { d, fill: 'none', ...stroke(m, theme), ...labels });
    }
    case 'specks': {
      const moved = m.points.map((p) => ({ x: x(p), y: y(p) }));
      return element('path', { d: specksPath(m.shape, moved, m.radius), fill: 'none', ...stroke(m, theme), ...labels });
    }
    case 'text': {
      const [px, py] = [x(m.at), y(m.at)];
      const degrees = (m.angle * 180) / Math.PI;
      return element(
        'text',
        {
          x: px,
          y: py,
          'font-size': m.size,
          'text-anchor': m.anchor === 'start' ? undefined : m.anchor,
          transform: m.angle === 0 ? undefined : `rotate(${round(degrees)} ${round(px)} ${round(py)})`,
          'text-decoration': m.underlined ? 'underline' : undefined,
          ...fill(m.fill, theme),
          ...labels,
        },
        [escapeXml(m.text)],
      );
    }
  }
}

function stroke(m: Stroke, theme: Theme, filled?: Role): Attributes {
  return {
    class: filled ? `s-${m.stroke} f-${filled}` : `s-${m.stroke}`,
    stroke: shade(m.stroke, theme),
    'stroke-width': m.width,
    'stroke-dasharray': m.dash?.map(round).join(' '),
    'stroke-linecap': m.cap,
  };
}

const fill = (role: Role, theme: Theme): Attributes => ({ class: `f-${role}`, fill: shade(role, theme) });
