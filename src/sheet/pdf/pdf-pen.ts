import {
  appendBezierCurve,
  beginText,
  closePath,
  concatTransformationMatrix,
  endText,
  fill,
  fillAndStroke,
  LineCapStyle,
  LineJoinStyle,
  lineTo,
  moveTo,
  type PDFOperator,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  setDashPattern,
  setFillingRgbColor,
  setFontAndSize,
  setLineCap,
  setLineJoin,
  setLineWidth,
  setStrokingRgbColor,
  setTextMatrix,
  showText,
  stroke,
} from '@cantoo/pdf-lib';
import { type Look, type Pen, type Point, type TextLook, UNDERLINE, UNDERLINE_WIDTH } from '../flow/pen.ts';
import { nameOf, type Type } from './type.ts';

/** Points of PDF in a millimetre: 72 to the inch. */
export const POINTS = 72 / 25.4;
/** Length of the handles of a cubic curve that stands for a quarter of a circle of radius 1; it is off by 0.03 % at most. */
const HANDLE = (4 / 3) * (Math.SQRT2 - 1);
/** Draws on a page of a PDF file. */
export class PdfPen implements Pen {
  readonly #page: PDFPage;
  readonly #height: number;
  readonly #type: Type;

  constructor(page: PDFPage, height: number, type: Type) {
    this.#page = page;
    this.#height = height;
    this.#type = type;
    type.lendTo(page);
  }

  at(x: number, y: number, scale: number, work: () => void): void {
    // the page's own axis points up: a shift and a scale about the upper left corner
    const [e, f] = [x * POINTS, (this.#height - y) * POINTS - scale * this.#height * POINTS];
    this.#page.pushOperators(pushGraphicsState(), concatTransformationMatrix(scale, 0, 0, scale, e, f));
    work();
    this.#page.pushOperators(popGraphicsState());
  }

  polyline(points: readonly Point[], look: Look, closed = false): void {
    const [first, ...rest] = points;
    if (!first) return;
    this.#path([moveTo(...this.#xy(first)), ...rest.map((p) => lineTo(...this.#xy(p))), ...(closed ? [closePath()] : [])], look);
  }

  circle(centre: Point, radius: number, look: Look): void {
    this.#path([...this.#quarters(centre, radius, 4), closePath()], look);
  }

  halfCircle(centre: Point, radius: number, look: Look): void {
    this.#path(this.#quarters(centre, radius, 2), look);
  }

  text(text: string, at: Point, look: TextLook): void {
    const { size, colour, face = 'plain', anchor = 'start', angle = 0 } = look;
    const runs = this.#type.runs(text, face);
    const width = runs.reduce((sum, r) => sum + r.width, 0) * size;
    const back = anchor === 'start' ? 0 : anchor === 'middle' ? width / 2 : width;
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const along = (d: number): Point => ({ x: at.x + d * c, y: at.y + d * s });
    let done = -back;
    for (const run of runs) {
      const [x, y] = this.#xy(along(done));
      this.#page.pushOperators(
        beginText(),
        ...rgb(colour, setFillingRgbColor),
        setFontAndSize(nameOf(run.font), size * POINTS),
        setTextMatrix(c, -s, s, c, x, y),
        showText(run.font.encodeText(run.text)),
        endText(),
      );
      done += run.width * size;
    }
    if (!look.underlined) return;
    const under = { x: -s * UNDERLINE * size, y: c * UNDERLINE * size };
    const ends = [along(-back), along(width - back)].map((p) => ({ x: p.x + under.x, y: p.y + under.y }));
    this.polyline(ends, { stroke: colour, width: UNDERLINE_WIDTH * size });
  }

  #xy(p: Point): [number, number] {
    return [p.x * POINTS, (this.#height - p.y) * POINTS];
  }

  /** Quarters of a circle, clockwise from its left end. */
  #quarters({ x, y }: Point, r: number, count: number): PDFOperator[] {
    const at = (k: number): Point => ({ x: -Math.round(Math.cos((k * Math.PI) / 2)), y: -Math.round(Math.sin((k * Math.PI) / 2)) });
    const put = (dx: number, dy: number): [number, number] => this.#xy({ x: x + r * dx, y: y + r * dy });
    const out = [moveTo(...put(-1, 0))];
    for (let k = 0; k < count; k++) {
      const [a, b] = [at(k), at(k + 1)];
      out.push(
        appendBezierCurve(...put(a.x + HANDLE * b.x, a.y + HANDLE * b.y), ...put(b.x + HANDLE * a.x, b.y + HANDLE * a.y), ...put(b.x, b.y)),
      );
    }
    return out;
  }

  #path(path: readonly PDFOperator[], look: Look): void {
    const stroked = look.stroke !== undefined;
    this.#page.pushOperators(
      pushGraphicsState(),
      ...(stroked
        ? [
            ...rgb(look.stroke!, setStrokingRgbColor),
            setLineWidth((look.width ?? 0.2) * POINTS),
            setLineCap(look.round ? LineCapStyle.Round : LineCapStyle.Butt),
            setLineJoin(LineJoinStyle.Round),
            ...(look.dash
              ? [
                  setDashPattern(
                    look.dash.map((d) => d * POINTS),
                    0,
                  ),
                ]
              : []),
          ]
        : []),
      ...(look.fill === undefined ? [] : rgb(look.fill, setFillingRgbColor)),
      ...path,
      ...(stroked && look.fill !== undefined ? [fillAndStroke()] : stroked ? [stroke()] : look.fill !== undefined ? [fill()] : []),
      popGraphicsState(),
    );
  }
}

function rgb(colour: string, set: (r: number, g: number, b: number) => PDFOperator): PDFOperator[] {
  const parts = /^#([\da-f]{2})([\da-f]{2})([\da-f]{2})$/i.exec(colour);
  if (!parts) throw new RangeError(`${JSON.stringify(colour)} is no colour as #rrggbb.`);
  const [r, g, b] = parts.slice(1).map((h) => Number.parseInt(h, 16) / 255) as [number, number, number];
  return [set(r, g, b)];
}
