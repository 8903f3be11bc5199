import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawAerial, drawDescribedAerial } from '#draw';
import { GivenError, type WireStructure } from '#engine';
import { DESCRIBED, lengthOf, structureOf } from './aerial-examples.ts';
import { labelled, outside, overlaps, readDrawing, textsOf } from './drawn.ts';
import { everyElement, textOf } from './xml.ts';

const NAMES = Object.keys(DESCRIBED);
const draw = (name: string) => readDrawing(drawDescribedAerial(DESCRIBED[name]!, { title: name, note: 'For 98.4 MHz.' }));
const drawnLength = (a: Readonly<Record<string, string | undefined>>) =>
  Math.hypot(Number(a.x2) - Number(a.x1), Number(a.y2) - Number(a.y1));

/** Level unit vector to the right in an elevation, by its heading, which gives whole degrees: enough for lengths to 0.02 %. */
function rightIn(heading: string): readonly [number, number] {
  const towards = heading.toLowerCase().split('looking ')[1]!;
  const compass: Readonly<Record<string, number>> = { north: 0, east: Math.PI / 2, south: Math.PI, west: -Math.PI / 2 };
  const look = compass[towards] ?? (Number(towards.replace('°', '')) * Math.PI) / 180;
  return [Math.sin(look + Math.PI / 2), Math.cos(look + Math.PI / 2)];
}

describe.each(NAMES)('%s', (name) => {
  const drawing = draw(name);
  const views = labelled(drawing.elements, 'view');

  test('texts neither touch each other nor leave the sheet', () => {
    expect(drawing.texts.length).toBeGreaterThan(5);
    expect(overlaps(drawing.texts)).toEqual([]);
    expect(outside(drawing)).toEqual([]);
  });

  test('every wire is drawn in every view, to scale', () => {
    const { wires } = structureOf(name);
    expect(views.length).toBeGreaterThan(0);
    let compared = 0;
    for (const view of views) {
      const scale = Number(view.attributes['data-scale']);
      const inView = everyElement(view);
      const heading = labelled(inView, 'heading')[0]!;
      const right = heading.attributes['data-heading'] === 'plan' ? null : rightIn(textOf(heading));
      wires.forEach((w, i) => {
        const drawn = labelled(inView, 'wire', `${i}`);
        expect(drawn.length).toBe(1);
        const step = [w.to.x - w.from.x, w.to.y - w.from.y, w.to.z - w.from.z];
        if (drawn[0]!.name === 'circle') return;
        const length = drawnLength(drawn[0]!.attributes);
        // never longer than it is
        expect(length).toBeLessThan(lengthOf(w) * 1e3 * scale * 1.001 + 0.002);
        const flat = right ? Math.hypot(step[0]! * right[0] + step[1]! * right[1], step[2]!) : Math.hypot(step[0]!, step[1]!);
        if (Math.abs(flat / lengthOf(w) - 1) > 1e-4 || length < 2) return;
        compared++;
        expect(length / (lengthOf(w) * 1e3 * scale)).toBeGreaterThan(0.999);
        expect(length / (lengthOf(w) * 1e3 * scale)).toBeLessThan(1.001);
      });
    }
    expect(compared).toBeGreaterThan(0);
  });

  test('thickness is to scale, never under 0.3 mm', () => {
    const { wires } = structureOf(name);
    const scale = Number(views[0]!.attributes['data-scale']);
    for (const e of labelled(drawing.elements, 'wire')) {
      if (e.name === 'circle' || e.attributes['data-body']) continue;
      const wanted = Math.max(0.3, wires[Number(e.attributes['data-wire'])]!.diameter * 1e3 * scale);
      expect(Number(e.attributes['stroke-width'])).toBeCloseTo(wanted, 3);
    }
  });

  test('the scale bar is as long as it says', () => {
    const scale = Number(views[0]!.attributes['data-scale']);
    const bar = labelled(drawing.elements, 'part', 'scale-bar')[0]!;
    const [from, to] = ['from', 'to'].map((which) => Number(labelled(everyElement(bar), 'bar', which)[0]!.attributes.x));
    const [number, unit] = textOf(labelled(everyElement(bar), 'bar', 'to')[0]!).split(' ');
    const millimetres = Number(number) * (unit === 'm' ? 1e3 : 1);
    expect((to! - from!) / scale / millimetres).toBeCloseTo(1, 3);
  });

  test('the same again, bit for bit', () => {
    expect(drawDescribedAerial(DESCRIBED[name]!)).toBe(drawDescribedAerial(DESCRIBED[name]!));
  });

  test('it has a name and says in words what is to cut', () => {
    const { root } = drawing;
    expect(root.attributes.role).toBe('img');
    const [title, desc] = [root.children, root.children].map((list, i) =>
      list.find((c) => typeof c !== 'string' && c.name === ['title', 'desc'][i]),
    ) as [{ attributes: Record<string, string> } & Parameters<typeof textOf>[0], Parameters<typeof textOf>[0]];
    expect(root.attributes['aria-labelledby']).toBe(`${title.attributes.id} ${desc.attributes.id}`);
    expect(textOf(title)).toBe(name);
    for (const cut of textsOf(drawing, 'text', 'cut').slice(0, 1)) expect(textOf(desc)).toContain(cut.slice(0, 12));
  });
});

describe('what is to cut and what is dimensioned', () => {
  // Expected values: worked by hand from the shapes' own sizes.
  const cuts = (name: string) => textsOf(draw(name), 'text', 'cut').join(' ');
  const dimensions = (name: string) => [...textsOf(draw(name), 'dimension')].sort((a, b) => (a < b ? -1 : 1));

  test('a dipole is two rods; its length over all is given', () => {
    expect(cuts('dipole')).toBe('2 × 720 mm, Ø 6 mm copper');
    expect(dimensions('dipole')).toEqual(['1440 mm', '2 × 720 mm']);
  });

  test('a folded dipole is bent of one piece, 2 x (1440 + 40) mm', () => {
    expect(cuts('folded')).toBe('2960 mm, Ø 6 mm copper: bent 720 mm + 40 mm + 1440 mm + 40 mm + 720 mm');
  });

  test('of two thicknesses it is a bent wire and two rods', () => {
    expect(cuts('folded-two-thicknesses')).toBe('1520 mm, Ø 2 mm copper: bent 40 mm + 1440 mm + 40 mm 2 × 720 mm, Ø 6 mm copper');
  });

  test('a beam: elements, distances, boom', () => {
    expect(cuts('beam')).toBe('1520 mm, Ø 8 mm copper 1360 mm, Ø 8 mm copper 2 × 710 mm, Ø 8 mm copper');
    expect(dimensions('beam')).toEqual(['1100 mm', '1360 mm', '1520 mm', '2 × 710 mm', '500 mm', '600 mm']);
  });

  test('six elements: five distances, which add up to the boom', () => {
    const d = draw('beam-six');
    const spacings = textsOf(d, 'dimension', 'spacing').map((t) => Number(t.split(' ')[0]));
    expect(spacings.length).toBe(5);
    expect(spacings.reduce((a, b) => a + b, 0)).toBe(2500);
    expect(textsOf(d, 'dimension', 'boom')).toEqual(['2500 mm']);
  });

  test('four radials are one dimension', () => {
    expect(textsOf(draw('rod-radials'), 'dimension', 'piece')).toEqual(expect.arrayContaining(['750 mm', '4 × 750 mm']));
  });

  test('a round loop is given by its diameter: pi x 100 mm of wire', () => {
    expect(cuts('loop-round')).toBe('314 mm, Ø 2 mm copper: bent 1 turn Ø 100 mm');
    expect(dimensions('loop-round')).toEqual(['1 turn Ø 100 mm']);
  });

  test('turns: 3 x sqrt((pi 60)^2 + 10^2) + 2 x 10 + 30 = 616 mm', () => {
    expect(cuts('loop-turns')).toBe('616 mm, Ø 1 mm copper: bent 15 mm + 10 mm + 3 turns Ø 60 mm, 10 mm from turn to turn + 10 mm + 15 mm');
  });

  test('a square loop is one wire of four sides, cut at the feed', () => {
    expect(cuts('loop-square')).toBe('3080 mm, Ø 3 mm copper: bent 385 mm + 770 mm + 770 mm + 770 mm + 385 mm');
    expect(dimensions('loop-square')).toEqual(['2 × 385 mm', '3 × 770 mm']);
  });

  test('a wire joined to the middle of another does not cut it; the joint is dimensioned from the nearer end', () => {
    const d = draw('given-tee');
    expect(textsOf(d, 'dimension', 'piece')).toContain('1100 mm');
    expect(textsOf(d, 'dimension', 'joint')).toEqual(['500 mm']);
    // 0.6 and 0.4 of sqrt(1 + 0.1^2) m
    expect(textsOf(d, 'dimension', 'piece')).toEqual(expect.arrayContaining(['603 mm', '402 mm']));
    expect(labelled(d.elements, 'joint').length).toBe(2);
  });

  test('loads cut the wire and say what they are', () => {
    const d = draw('given-loaded');
    expect(textsOf(d, 'load', 'text')).toEqual(['2.2 µH', '2.2 µH + 12 pF in parallel', '50 − j20 Ω']);
    expect(textsOf(d, 'text', 'cut')).toEqual(['600 mm, Ø 2 mm copper', '3 × 400 mm, Ø 2 mm copper', '200 mm, Ø 2 mm copper']);
    expect(labelled(d.elements, 'load', 'box').length).toBe(3);
  });

  test('from 10 m on lengths are in metres', () => {
    expect(textsOf(draw('given-long-wire'), 'text', 'cut').join(' ')).toBe('33.02 m, Ø 2 mm copper: bent 9000 mm + 24.02 m');
  });

  test('the case of a set is shown, and is nothing to cut', () => {
    const d = draw('rod-case');
    expect(textsOf(d, 'text', 'cut')).toEqual(['750 mm, Ø 6 mm copper', 'case 160 mm wide, 80 mm deep, 100 mm high']);
    expect(labelled(d.elements, 'body', 'true').length % 20).toBe(0);
    expect(labelled(d.elements, 'joint').length).toBe(0);
  });

  test('a leaning rod has its true length, underlined where the view shortens it', () => {
    const dimension = labelled(draw('rod-case').elements, 'dimension', 'piece')[0]!;
    expect(textOf(dimension)).toBe('750 mm');
    expect(dimension.attributes['text-decoration']).toBe('underline');
  });
});

test('many different lengths: the longest are dimensioned, the list has them all, and it says so', () => {
  const wires = Array.from({ length: 30 }, (_, i) => ({
    from: { x: 0, y: 0.3 * i, z: 2 },
    to: { x: 0.5 + 0.01 * i, y: 0.3 * i, z: 2 },
    diameter: 0.002,
    metal: 'copper' as const,
  }));
  const d = readDrawing(drawAerial({ wires, feed: { wire: 29, at: 0.5 }, loads: [], ground: { kind: 'free-space' } }));
  expect(textsOf(d, 'dimension', 'piece').length).toBe(24);
  expect(textsOf(d, 'dimension', 'piece')).toContain('780 mm');
  expect(textsOf(d, 'dimension', 'piece')).not.toContain('500 mm');
  // 29 whole wires, and the fed one in two halves
  expect(textsOf(d, 'text', 'cut').length).toBe(30);
  expect(textsOf(d, 'text', 'left-out')).toEqual(['Only the longest are dimensioned.']);
  expect(overlaps(d.texts)).toEqual([]);
});

describe('views', () => {
  const headings = (name: string) => textsOf(draw(name), 'heading');

  test('what lies in one plane has one view', () => {
    for (const name of ['dipole', 'dipole-upright', 'v-inverted', 'folded', 'loop-square', 'rod-earth', 'dipole-sloping'])
      expect(headings(name).length, name).toBe(1);
    expect(headings('beam')).toEqual(['Plan, north at the top']);
    expect(headings('v-level')).toEqual(['Plan, north at the top']);
  });

  test('a loop turned by 0.3 rad is seen square on', () => {
    expect(headings('loop-square')).toEqual(['Looking 017°']);
  });

  test('radials are not drawn twice from sides that look the same', () => {
    expect(headings('rod-radials')).toEqual(['Front, looking north', 'Plan, north at the top']);
  });

  test('an upright beam shows its boom from the side', () => {
    const d = draw('beam-upright');
    const side = labelled(d.elements, 'view', 'side')[0]!;
    expect(labelled(everyElement(side), 'boom').length).toBe(1);
  });

  test('a turned plan carries a north arrow that points north', () => {
    const d = draw('beam-folded');
    const plan = labelled(d.elements, 'view', 'plan')[0]!;
    const inPlan = everyElement(plan);
    const wires = structureOf('beam-folded').wires;
    // the driven element runs along bearing 0.7 + 90 degrees
    const driven = labelled(inPlan, 'wire', '0')[0]!.attributes;
    const onPaper = Math.atan2(Number(driven.x2) - Number(driven.x1), Number(driven.y1) - Number(driven.y2));
    const bearing = Math.atan2(wires[0]!.to.x - wires[0]!.from.x, wires[0]!.to.y - wires[0]!.from.y);
    const letter = labelled(inPlan, 'north', 'arrow')[0]!.attributes;
    const tails = inPlan.filter((e) => e.name === 'line' && e.attributes['stroke-width'] === '0.25' && !e.attributes['data-boom']);
    const shaft = tails.at(-1)!.attributes;
    const north = Math.atan2(Number(shaft.x2) - Number(shaft.x1), Number(shaft.y1) - Number(shaft.y2));
    expect(Math.cos(north - (onPaper - bearing))).toBeGreaterThan(0.9999);
    expect((Number(letter.x) - Number(shaft.x1)) * Math.sin(north)).toBeGreaterThan(-1e-9);
  });
});

describe('ground', () => {
  test('is drawn to scale where it is near: 2500 mm of earth wire reach it', () => {
    const d = draw('rod-earth');
    const scale = Number(labelled(d.elements, 'view')[0]!.attributes['data-scale']);
    const surface = labelled(d.elements, 'ground', 'to-scale')[0]!.attributes;
    const wire = labelled(d.elements, 'wire', '1')[0]!.attributes;
    expect((Number(surface.y1) - Math.min(Number(wire.y1), Number(wire.y2))) / scale).toBeCloseTo(2500, -1);
  });

  test('is drawn nearer where it is far, and the height is underlined', () => {
    const d = draw('given-loaded');
    expect(labelled(d.elements, 'ground', 'nearer').length).toBe(1);
    const height = labelled(d.elements, 'dimension', 'height')[0]!;
    expect(textOf(height)).toBe('6000 mm');
    expect(height.attributes['text-decoration']).toBe('underline');
  });

  test('there is none in free space, nor in a plan', () => {
    expect(labelled(draw('dipole').elements, 'ground').length).toBe(0);
    expect(labelled(draw('beam').elements, 'ground').filter((e) => e.name === 'line').length).toBe(0);
    expect(textsOf(draw('beam'), 'text', 'ground')).toEqual(['The feed is 3000 mm above real ground.']);
  });
});

describe('safety and edges', () => {
  test('markup in texts stays text', () => {
    const evil = '</text><script>alert(1)</script> "&\' \u0000';
    const svg = drawDescribedAerial(DESCRIBED.dipole!, { title: evil, note: evil, bodies: [{ wires: [0], label: evil }] });
    const d = readDrawing(svg);
    expect(d.elements.filter((e) => e.name === 'script').length).toBe(0);
    expect(svg).not.toContain('<script');
    expect(textsOf(d, 'text', 'title').join(' ')).toContain('<script>alert(1)</script>');
  });

  test('a name for its elements is a name', () => {
    expect(() => drawDescribedAerial(DESCRIBED.dipole!, { id: 'a" onload="x' })).toThrow(GivenError);
    expect(drawDescribedAerial(DESCRIBED.dipole!, { id: 'mine' })).toContain('aria-labelledby="mine-title mine-desc"');
  });

  test('a structure that cannot be is refused', () => {
    expect(() => drawAerial({ wires: [], feed: { wire: 0, at: 0 }, loads: [], ground: { kind: 'free-space' } })).toThrow(GivenError);
    expect(() => drawDescribedAerial(DESCRIBED.dipole!, { width: 10 })).toThrow(GivenError);
    for (const wires of [[], [1]])
      expect(() => drawDescribedAerial(DESCRIBED.dipole!, { bodies: [{ wires, label: 'x' }] })).toThrow(GivenError);
  });

  test('light and dark differ in colour alone', () => {
    const [light, dark] = (['light', 'dark'] as const).map((theme) => drawDescribedAerial(DESCRIBED.beam!, { theme, id: 'x' }));
    const colourless = (svg: string) => svg.replaceAll(/#[0-9a-f]{6}/g, '#');
    expect(light).not.toBe(dark);
    expect(colourless(light!)).toBe(colourless(dark!));
  });

  test('random wires: well-formed, texts clear of each other', () => {
    const coordinate = fc.integer({ min: -20, max: 20 }).map((n) => n / 10);
    const point = fc.record({ x: coordinate, y: coordinate, z: coordinate.map((z) => z + 3) });
    // a chain, so that the wires hang together
    const chain = fc.uniqueArray(point, { minLength: 2, maxLength: 9, selector: (p) => `${p.x} ${p.y} ${p.z}` });
    let drawn = 0;
    fc.assert(
      fc.property(chain, fc.double({ min: 0.05, max: 0.95, noNaN: true }), (points, at) => {
        const structure: WireStructure = {
          wires: points.slice(1).map((to, i) => ({ from: points[i]!, to, diameter: 0.002, metal: 'copper' })),
          feed: { wire: 0, at },
          loads: [],
          ground: { kind: 'real', permittivity: 15, conductivity: 0.005 },
        };
        let svg: string;
        try {
          svg = drawAerial(structure);
        } catch (problem) {
          if (problem instanceof GivenError) return;
          throw problem;
        }
        drawn++;
        const d = readDrawing(svg);
        expect(overlaps(d.texts)).toEqual([]);
        expect(outside(d)).toEqual([]);
      }),
      { numRuns: 40, seed: 7 },
    );
    expect(drawn).toBeGreaterThan(20);
  });
});
