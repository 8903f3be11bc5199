import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drawCoil, drawFrame, frameWinding, tankWindings, windingSteps } from '#draw';
import { GivenError } from '#engine';
import { arbitraryTank } from '../set-file/arbitrary.ts';
import { FRAME, TANKS } from './coil-examples.ts';
import { type Drawn, labelled, outside, overlaps, readDrawing, textsOf } from './drawn.ts';
import { type Element, everyElement } from './xml.ts';

const drawn = (name: string): Drawn => readDrawing(drawCoil(TANKS[name]!)!);
const view = (d: Drawn, which: string): Element => labelled(d.elements, 'view', which).find((e) => e.name === 'g')!;
const points = (e: Element): (readonly [number, number])[] =>
  e.attributes.points!.split(' ').map((pair) => pair.split(',').map(Number) as unknown as readonly [number, number]);
const turnsOf = (d: Drawn, part: string) => labelled(everyElement(view(d, 'side')), 'part', part).map(points);
const most = (values: readonly number[]) => Math.max(...values) - Math.min(...values);

/** A helix cut into short straight pieces: arithmetic of its own, beside the closed form. */
function helixLength(turns: number, innerDiameter: number, wireDiameter: number, pitch: number): number {
  const pieces = 200_000;
  const radius = (innerDiameter + wireDiameter) / 2;
  const at = (i: number) => {
    const angle = (2 * Math.PI * turns * i) / pieces;
    return [radius * Math.cos(angle), radius * Math.sin(angle), (pitch * angle) / (2 * Math.PI)] as const;
  };
  let [sum, before] = [0, at(0)];
  for (let i = 1; i <= pieces; i++) {
    const next = at(i);
    sum += Math.hypot(next[0] - before[0], next[1] - before[1], next[2] - before[2]);
    before = next;
  }
  return sum;
}

describe('a coil to scale', () => {
  test('measured on the paper it is its size times the scale', () => {
    const d = drawn('air-wound');
    const scale = Number(view(d, 'side').attributes['data-scale']);
    const coil = turnsOf(d, 'coil').flat();
    // to the middle of the wire: inner diameter and one wire across, turns times pitch along
    expect(most(coil.map((p) => p[1]))).toBeCloseTo(scale * 11, 2);
    expect(most(coil.map((p) => p[0]))).toBeCloseTo(scale * 4.5 * 2.25, 2);
    const ring = labelled(everyElement(view(d, 'end')), 'part', 'ring').flatMap(points);
    expect(most(ring.map((p) => p[0]))).toBeCloseTo(scale * 11, 1);
  });

  test('it has its turns: two halves to each, and a half more', () => {
    expect(turnsOf(drawn('air-wound'), 'coil')).toHaveLength(9);
    expect(turnsOf(drawn('air-wound'), 'aerial link')).toHaveLength(2);
  });

  test('the link ends a gap before the cold end', () => {
    const d = drawn('air-wound');
    const scale = Number(view(d, 'side').attributes['data-scale']);
    const right = Math.max(...turnsOf(d, 'aerial link').flatMap((l) => l.map((p) => p[0])));
    const left = Math.min(...turnsOf(d, 'coil').flatMap((l) => l.map((p) => p[0])));
    expect(left - right).toBeCloseTo(scale * 1, 2);
  });

  test('a tap sits after its turns, counted from the cold end', () => {
    const d = drawn('air-wound');
    const scale = Number(view(d, 'side').attributes['data-scale']);
    const dot = labelled(everyElement(view(d, 'side')), 'tap', 'dot')[0]!;
    const coil = turnsOf(d, 'coil').flat();
    expect(Number(dot.attributes.cx) - Math.min(...coil.map((p) => p[0]))).toBeCloseTo(scale * 1.5 * 2.25, 2);
    // an odd number of halves ends opposite the beginning
    expect(Number(dot.attributes.cy)).toBeCloseTo(Math.min(...coil.map((p) => p[1])), 2);
    expect(textsOf(d, 'tap', 'text')).toEqual(['tap 1 1/2']);
  });

  test('a tap behind the coil says so', () => {
    expect(textsOf(drawn('former'), 'tap', 'text')).toEqual(['tap 12', 'tap 35 1/4, behind']);
  });

  test('a former is drawn where one stays in, and only there', () => {
    expect(labelled(drawn('former').elements, 'part', 'former')).toHaveLength(1);
    expect(labelled(drawn('air-wound').elements, 'part', 'former')).toHaveLength(0);
  });

  test('dimensions say the sizes', () => {
    expect(new Set(textsOf(drawn('air-wound'), 'dimension'))).toEqual(new Set(['gap 1 mm', 'pitch 2.25 mm', 'winding 10.1 mm', 'Ø 10 mm']));
  });

  test('the scale stands in words', () => {
    expect(textsOf(drawn('air-wound'), 'text', 'scale')[0]).toBe('Drawn five times its size when printed 180 mm wide.');
    expect(textsOf(drawn('former'), 'text', 'scale')[0]).toContain('true to size');
    expect(textsOf(drawn('flat'), 'text', 'scale')[0]).toContain('a tenth of its size');
  });

  test('turns too fine to be told apart are left out, and the drawing says so', () => {
    const fine = { ...TANKS.former!, coil: { ...TANKS.former!.coil, pitch: 0.11e-3, wireDiameter: 0.1e-3 } } as (typeof TANKS)[string];
    expect(textsOf(readDrawing(drawCoil(fine)!), 'text', 'left-out')).toEqual(['Fewer turns are drawn than wound.']);
    expect(textsOf(drawn('air-wound'), 'text', 'left-out')).toEqual([]);
  });

  test('a coil known by its values alone cannot be drawn', () => {
    expect(drawCoil(TANKS.bought!)).toBeNull();
    expect(tankWindings(TANKS.bought!)).toBeNull();
    expect(windingSteps(TANKS.bought!)).toBeNull();
  });

  test('a sheet too narrow is refused', () => {
    expect(() => drawCoil(TANKS.flat!, { width: 20 })).toThrow(GivenError);
  });

  test('any coil that can be wound: no text runs into another or off the sheet', () => {
    fc.assert(
      fc.property(fc.boolean().chain(arbitraryTank), (tank) => {
        const svg = drawCoil(tank);
        if (tank.coil.kind === 'electrical') return svg === null;
        const d = readDrawing(svg!);
        expect(overlaps(d.texts)).toEqual([]);
        expect(outside(d)).toEqual([]);
        return true;
      }),
      { numRuns: 60 },
    );
  });
});

describe('how to wind it', () => {
  test('wire to cut is as long as the helix and both leads', () => {
    const steps = windingSteps(TANKS['air-wound']!)!;
    const metres = helixLength(4.5, 10e-3, 1e-3, 2.25e-3) + 2 * 5e-3;
    expect(steps[0]).toBe(`Cut ${Math.round(metres * 1e3)} mm (5 mm of it at each end for leads) of Ø 1 mm copper wire.`);
  });

  test('the gap between turns is said in millimetres and in thicknesses of the wire', () => {
    expect(windingSteps(TANKS['air-wound']!)![2]).toContain(
      'Leave 1.25 mm between the turns, 1.2 thicknesses of the wire: 2.25 mm from middle to middle.',
    );
  });

  test('close turns are called so', () => {
    expect(windingSteps(TANKS.former!)![2]).toContain('The turns lie close');
  });

  test('a tap is found by turns, and along the wire', () => {
    const metres = helixLength(1.5, 10e-3, 1e-3, 2.25e-3);
    expect(windingSteps(TANKS['air-wound']!)![3]).toBe(
      `Tap for the detector: 1 1/2 turns from the cold end, ${(metres * 1e3).toFixed(1)} mm along the wire from the first turn's beginning.`,
    );
  });

  test('a link pushed in says how far', () => {
    expect(windingSteps(TANKS.flat!)!.at(-1)).toContain('pushed 20 mm into the coil');
  });
});

describe('a frame aerial', () => {
  test('is measured to the middle of its wire', () => {
    const frame = frameWinding(FRAME)!;
    expect(frame.innerDiameter + frame.wireDiameter).toBeCloseTo(0.4, 12);
    // outer edge to outer edge 20 mm: two steps of 9 mm and one wire
    expect(frame.pitch).toBeCloseTo(9e-3, 12);
    expect(readDrawing(drawFrame(FRAME)!).texts.length).toBeGreaterThan(4);
  });

  test('other aerials are no frames', () => {
    expect(drawFrame({ kind: 'coil', axis: { kind: 'vertical' } })).toBeNull();
  });
});
