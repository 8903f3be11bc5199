import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawTurned, type TurnedAerial } from '#draw';
import { GivenError } from '#engine';
import { labelled, outside, overlaps, readDrawing, textsOf } from './drawn.ts';

const at = (x: number, y: number, z: number) => ({ x, y, z });
const STATIONS = [
  { label: 'Harbour', bearing: 0.3, picked: true },
  { label: 'Mill', bearing: 3, picked: false },
];
/** One metre east, one north, one up from a corner. */
const CORNER: TurnedAerial = {
  wires: [
    { from: at(0, 0, 5), to: at(1, 0, 5) },
    { from: at(0, 0, 5), to: at(0, 1, 5) },
    { from: at(0, 0, 5), to: at(0, 0, 6) },
  ],
  feed: at(0, 0, 5),
  stations: STATIONS,
};
const degrees = (d: number) => (d * Math.PI) / 180;
const draw = (azimuth: number, elevation: number, aerial = CORNER) =>
  readDrawing(drawTurned(aerial, { title: 'Corner', azimuth, elevation }));

/** Steps of the three wires on the paper, y up. */
function steps(azimuth: number, elevation: number): readonly (readonly [number, number])[] {
  const { elements } = draw(azimuth, elevation);
  return [0, 1, 2].map((i) => {
    const a = labelled(elements, 'wire', `${i}`)[0]!.attributes;
    return [Number(a.x2) - Number(a.x1), Number(a.y1) - Number(a.y2)];
  });
}

describe('the way one looks', () => {
  const [east, north, up] = [0, 1, 2];
  test('looking north and level: east to the right, up upwards, north away', () => {
    const s = steps(0, 0);
    expect(s[east]![0]).toBeGreaterThan(10);
    expect(s[east]![1]).toBeCloseTo(0, 2);
    expect(Math.hypot(...s[north]!)).toBeCloseTo(0, 2);
    expect(s[up]![0]).toBeCloseTo(0, 2);
    expect(s[up]![1]).toBeCloseTo(s[east]![0], 2);
  });
  test('looking east: north to the left', () => {
    const s = steps(degrees(90), 0);
    expect(s[north]![0]).toBeLessThan(-10);
    expect(Math.hypot(...s[east]!)).toBeCloseTo(0, 2);
  });
  test('from above with north at the top: a map', () => {
    const s = steps(0, degrees(90));
    expect(s[north]![1]).toBeCloseTo(s[east]![0], 2);
    expect(s[north]![0]).toBeCloseTo(0, 2);
    expect(Math.hypot(...s[up]!)).toBeCloseTo(0, 2);
  });
  test('three equal edges at right angles: the squares of what is seen of them add up to two, whichever way (theorem of Gauss)', () =>
    fc.assert(
      fc.property(fc.double({ min: 0, max: 6.3, noNaN: true }), fc.double({ min: -1.57, max: 1.57, noNaN: true }), (azimuth, elevation) => {
        const unit = steps(0, 0)[0]![0];
        const sum = steps(azimuth, elevation).reduce((all, s) => all + (s[0] ** 2 + s[1] ** 2) / unit ** 2, 0);
        expect(sum).toBeCloseTo(2, 2);
      }),
      { numRuns: 40 },
    ));
});

test('the sheet keeps its size as the aerial is turned, and nothing leaves it', () => {
  const sizes = new Set<string>();
  for (let azimuth = 0; azimuth < 360; azimuth += 40)
    for (const elevation of [-90, -30, 0, 22, 60, 90])
      for (const width of [85, 150]) {
        const drawing = readDrawing(
          drawTurned(CORNER, { title: 'Corner', azimuth: degrees(azimuth), elevation: degrees(elevation), width }),
        );
        sizes.add(`${drawing.width} ${drawing.height}`);
        expect(outside(drawing)).toEqual([]);
        for (const e of drawing.elements.filter((x) => x.name === 'line'))
          for (const key of ['x1', 'x2'] as const) {
            expect(Number(e.attributes[key])).toBeGreaterThan(0);
            expect(Number(e.attributes[key])).toBeLessThan(drawing.width);
          }
      }
  expect(sizes.size).toBe(2);
});

test('askew, no text stands on another', () => expect(overlaps(draw(degrees(25), degrees(22)).texts)).toEqual([]));

test('the name of the picked station stands clear of its arrow', () => {
  for (let azimuth = 0; azimuth < 360; azimuth += 15)
    for (const elevation of [5, 22, 60, 90])
      for (const width of [85, 150]) {
        const drawing = readDrawing(
          drawTurned(CORNER, { title: 'Corner', azimuth: degrees(azimuth), elevation: degrees(elevation), width }),
        );
        const xs = drawing.texts.find((t) => t.text === 'Harbour')!.corners.map(([x]) => x);
        const ys = drawing.texts.find((t) => t.text === 'Harbour')!.corners.map(([, y]) => y);
        const arrow = labelled(drawing.elements, 'station', '0')[0]!.attributes;
        for (let k = 0; k <= 20; k++) {
          const [x, y] = (['x', 'y'] as const).map(
            (c) => Number(arrow[`${c}1`]) + (k / 20) * (Number(arrow[`${c}2`]) - Number(arrow[`${c}1`])),
          ) as [number, number];
          const inside = x > Math.min(...xs) && x < Math.max(...xs) && y > Math.min(...ys) && y < Math.max(...ys);
          expect(inside, `${azimuth} ${elevation} ${width}`).toBe(false);
        }
      }
});

test('a wire is as thick as its current: twice the current, twice the breadth above the thinnest', () => {
  const currents = [1, 1, 1, 0.5, 0.5, 0.5, 0, 0, 0].map((re, i) => ({ ...at(i / 10, 0, 5), re, im: 0 }));
  const drawn = labelled(draw(0.4, 0.3, { ...CORNER, currents }).elements, 'current');
  const width = (amount: string) => Number(drawn.find((e) => e.attributes['data-current'] === amount)!.attributes['stroke-width']);
  expect(drawn).toHaveLength(6);
  expect((width('1') - width('0')) / (width('0.5') - width('0'))).toBeCloseTo(2, 2);
});

test('what is near hides what is far', () => {
  // seen from the south, the wire at the south is drawn last
  const pair = {
    ...CORNER,
    wires: [
      { from: at(0, -1, 0), to: at(1, -1, 0) },
      { from: at(0, 1, 0), to: at(1, 1, 0) },
    ],
  };
  const order = labelled(draw(0, 0.2, pair).elements, 'wire').map((e) => e.attributes['data-wire']);
  expect(order).toEqual(['1', '0']);
});

test('feed, compass and the picked station are named; the words tell where one looks', () => {
  const drawing = draw(degrees(25), degrees(22));
  expect(textsOf(drawing, 'name', 'feed')).toEqual(['feed']);
  expect(['N', 'E', 'S', 'W'].flatMap((l) => textsOf(drawing, 'compass', l))).toEqual(['N', 'E', 'S', 'W']);
  expect(textsOf(drawing, 'compass', 'station')).toEqual(['Harbour']);
  expect(labelled(drawing.elements, 'station')).toHaveLength(2);
  expect(drawTurned(CORNER, { title: 'Corner', azimuth: degrees(25), elevation: degrees(22) })).toContain('Seen looking 025°, 22° down.');
});

test.each([
  ['no wire', { ...CORNER, wires: [] }, {}],
  ['a wire to nowhere', { ...CORNER, wires: [{ from: at(0, 0, 0), to: at(Number.NaN, 0, 0) }] }, {}],
  ['a gaze that is none', CORNER, { azimuth: Number.NaN }],
  ['no room', CORNER, { width: 20 }],
])('%s is refused', (_, aerial, options) =>
  expect(() => drawTurned(aerial, { title: '', azimuth: 0, elevation: 0, ...options })).toThrow(GivenError),
);
