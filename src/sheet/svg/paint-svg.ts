import type { Pen, Point } from '../flow/pen.ts';
import type { SvgElement } from './read-svg.ts';

/** Size a drawing states [mm]. */
export function svgSize(svg: SvgElement): { readonly width: number; readonly height: number } {
  const millimetres = (key: string): number => {
    const found = /^([\d.]+)mm$/.exec(svg.attributes[key] ?? '');
    if (!found) throw new RangeError(`A drawing states its ${key} in millimetres, not ${JSON.stringify(svg.attributes[key])}.`);
    return Number(found[1]);
  };
  const [width, height] = [millimetres('width'), millimetres('height')];
  if (svg.attributes.viewBox !== `0 0 ${width} ${height}`) throw new RangeError('A unit of a drawing is a millimetre.');
  return { width, height };
}

/**
 * Draws a drawing where the pen stands, a unit to a millimetre: lines, polylines, polygons, circles, half circles, texts, in groups.
 *
 * @throws RangeError for an element it does not know: nothing is left out in silence
 */
export function paintSvg(element: SvgElement, pen: Pen): void {
  const { name, attributes: a } = element;
  const number = (key: string): number => {
    const value = Number(a[key]);
    if (a[key] === undefined || !Number.isFinite(value)) throw new RangeError(`${key} of a ${name} is ${JSON.stringify(a[key])}.`);
    return value;
  };
  const points = (): readonly Point[] =>
    a.points!.split(' ').map((p) => {
      const [x, y] = p.split(',').map(Number);
      return { x: x!, y: y! };
    });
  if (a['fill-opacity'] !== undefined) throw new RangeError(`A ${name} that is seen through cannot be printed.`);
  const look = {
    stroke: a.stroke,
    width: a['stroke-width'] === undefined ? undefined : number('stroke-width'),
    dash: a['stroke-dasharray']?.split(' ').map(Number),
    round: a['stroke-linecap'] === 'round',
    fill: a.fill === 'none' ? undefined : a.fill,
  };
  switch (name) {
    case 'svg':
    case 'g':
      for (const child of element.children) paintSvg(child, pen);
      return;
    case 'title':
    case 'desc':
    case 'style':
      return;
    case 'rect':
      // the drawing's own paper; that of the sheet will do
      if (a.class === 'f-paper') return;
      break;
    case 'line':
      pen.polyline(
        [
          { x: number('x1'), y: number('y1') },
          { x: number('x2'), y: number('y2') },
        ],
        look,
      );
      return;
    case 'polyline':
      pen.polyline(points(), look);
      return;
    case 'polygon':
      pen.polyline(points(), look, true);
      return;
    case 'circle':
      pen.circle({ x: number('cx'), y: number('cy') }, number('r'), look);
      return;
    case 'path': {
      const arc = /^M([\d.-]+),([\d.-]+)A([\d.]+),\3 0 0 1 ([\d.-]+),\2$/.exec(a.d ?? '');
      if (!arc) break;
      const [left, y, radius, right] = arc.slice(1).map(Number) as [number, number, number, number];
      pen.halfCircle({ x: (left + right) / 2, y }, radius, look);
      return;
    }
    case 'text': {
      const turn = /^rotate\((-?[\d.]+) /.exec(a.transform ?? '');
      if (a.transform !== undefined && !turn) break;
      pen.text(
        element.text,
        { x: number('x'), y: number('y') },
        {
          size: number('font-size'),
          colour: a.fill!,
          anchor: a['text-anchor'] === 'middle' || a['text-anchor'] === 'end' ? a['text-anchor'] : 'start',
          angle: turn ? (Number(turn[1]) * Math.PI) / 180 : 0,
          underlined: a['text-decoration'] === 'underline',
        },
      );
      return;
    }
  }
  throw new RangeError(`A ${name} as ${JSON.stringify(a)} cannot be printed.`);
}
