import { type Attributes, element, escapeXml } from '#draw';
import { type Look, type Pen, type Point, type TextLook, UNDERLINE, UNDERLINE_WIDTH } from '../flow/pen.ts';
import type { Face, Type } from '../pdf/type.ts';

const SANS = { 'font-family': 'Helvetica, Arial, Liberation Sans, sans-serif' };
/** What a screen has in place of the printer's fonts; each stretch of text is drawn as wide as on paper. */
const FACES: Readonly<Record<Face, Attributes>> = {
  plain: SANS,
  bold: { ...SANS, 'font-weight': '700' },
  fixed: { 'font-family': 'Courier, Courier New, Liberation Mono, monospace' },
};

/** Draws on a page of SVG, a unit to a millimetre. */
export class SvgPen implements Pen {
  readonly #type: Type;
  #parts: string[] = [];

  constructor(type: Type) {
    this.#type = type;
  }

  /** All that was drawn. */
  get markup(): string {
    return this.#parts.join('');
  }

  at(x: number, y: number, scale: number, work: () => void): void {
    const outer = this.#parts;
    this.#parts = [];
    work();
    outer.push(element('g', { transform: `translate(${round(x)} ${round(y)}) scale(${scale})` }, this.#parts));
    this.#parts = outer;
  }

  polyline(points: readonly Point[], look: Look, closed = false): void {
    if (points.length === 0) return;
    const places = points.map((p) => `${round(p.x)},${round(p.y)}`).join(' ');
    this.#put(closed ? 'polygon' : 'polyline', { points: places, ...looks(look) });
  }

  circle({ x, y }: Point, radius: number, look: Look): void {
    this.#put('circle', { cx: x, cy: y, r: radius, ...looks(look) });
  }

  halfCircle({ x, y }: Point, radius: number, look: Look): void {
    const r = round(radius);
    this.#put('path', { d: `M${round(x - radius)},${round(y)}A${r},${r} 0 0 1 ${round(x + radius)},${round(y)}`, ...looks(look) });
  }

  text(text: string, at: Point, look: TextLook): void {
    const { size, colour, face = 'plain', anchor = 'start', angle = 0 } = look;
    const runs = this.#type.runs(text, face);
    const width = runs.reduce((sum, r) => sum + r.width, 0) * size;
    const start = anchor === 'start' ? 0 : anchor === 'middle' ? -width / 2 : -width;
    const turned = angle === 0 ? {} : { transform: `rotate(${round((angle * 180) / Math.PI)} ${round(at.x)} ${round(at.y)})` };
    let done = start;
    for (const run of runs) {
      const textLength = run.width * size;
      const place = { x: at.x + done, y: at.y, textLength, lengthAdjust: 'spacingAndGlyphs', 'xml:space': 'preserve' };
      if (run.text.trim() !== '')
        this.#put('text', { ...place, ...FACES[face], 'font-size': size, fill: colour, ...turned }, escapeXml(run.text));
      done += textLength;
    }
    if (!look.underlined) return;
    const y = at.y + UNDERLINE * size;
    const line = looks({ stroke: colour, width: UNDERLINE_WIDTH * size });
    this.#put('line', { x1: at.x + start, y1: y, x2: at.x + start + width, y2: y, ...line, ...turned });
  }

  #put(name: string, attributes: Attributes, ...children: readonly string[]): void {
    this.#parts.push(element(name, attributes, children));
  }
}

/** To a micrometre of paper. */
const round = (value: number): number => Math.round(value * 1e3) / 1e3;

function looks({ stroke, width = 0.2, dash, round: rounded, fill }: Look): Attributes {
  if (stroke === undefined) return { fill: fill ?? 'none' };
  return {
    fill: fill ?? 'none',
    stroke,
    'stroke-width': width,
    'stroke-linejoin': 'round',
    'stroke-linecap': rounded ? 'round' : undefined,
    'stroke-dasharray': dash?.join(' '),
  };
}
