import { describe, expect, test } from 'vitest';
import { drawEnvelopeSpectrum, drawSpectrum } from '#draw';
import { GivenError } from '#engine';
import { labelled, outside, overlaps, readDrawing, textsOf } from './drawn.ts';
import { ABOUT_DIAL, AT_EAR } from './sound-examples.ts';
import { textOf } from './xml.ts';

type Drawing = ReturnType<typeof readDrawing>;
const pieces = (d: Drawing, series: number): number[][][] =>
  labelled(labelled(d.elements, 'series', `${series}`), 'part', 'line').map((e) =>
    e.attributes.points!.split(' ').map((pair) => pair.split(',').map(Number)),
  );
/** Level to paper by the numbers along the upright axis, which stand 0.36 of their size below their ticks. */
function upright(d: Drawing): (level: number) => number {
  const [a, b] = labelled(d.elements, 'tick', 'y').map((e) => [
    Number(textOf(e).replace('−', '-')),
    Number(e.attributes.y) - 0.36 * Number(e.attributes['font-size']),
  ]) as [number[], number[]];
  return (level) => a[1]! + ((b[1]! - a[1]!) * (level - a[0]!)) / (b[0]! - a[0]!);
}

describe('sound at the ear', () => {
  const d = readDrawing(drawSpectrum(AT_EAR, { title: 'Sound' }));
  test('a band is a step of its level from edge to edge, bands of equal width on the paper; silence has none', () => {
    const y = upright(d);
    const [steps, ...more] = pieces(d, 0);
    expect(more).toEqual([]);
    const heard = AT_EAR.sounds[0]!.levels as number[];
    const levels = heard.filter((l) => l > -200);
    // what the frame cuts off below is not among these: the programme stays above it
    expect(steps!.length).toBe(2 * levels.length);
    const width = steps![1]![0]! - steps![0]![0]!;
    levels.forEach((level, k) => {
      const [left, right] = [steps![2 * k]!, steps![2 * k + 1]!];
      expect(left[1]).toBeCloseTo(y(level), 1);
      expect(right[1]).toBe(left[1]);
      expect(right[0]! - left[0]!).toBeCloseTo(width, 1);
    });
  });
  test('all is named, no text runs into another or off the sheet', () => {
    // labels are broken into lines
    const names = textsOf(d, 'part', 'name').join(' ');
    for (const name of ['programme', 'disturbance', 'room noise at the ear', 'lines of 20 Hz', 'hearing threshold, for tones'])
      expect(names).toContain(name);
    expect(textsOf(d, 'axis')).toEqual(['frequency [kHz]', 'level [dB SPL]']);
    expect(overlaps(d.texts)).toEqual([]);
    expect(outside(d)).toEqual([]);
  });
  test('levels that do not match the bands are refused', () => {
    expect(() => drawSpectrum({ bands: [1000], sounds: [{ label: 'a', levels: [] }] }, { title: 'x' })).toThrow(GivenError);
    expect(() => drawSpectrum({ bands: [1000], sounds: [{ label: 'a', levels: [Number.NaN] }] }, { title: 'x' })).not.toThrow(TypeError);
  });
  test('limit: nothing to show is a drawing all the same', () => {
    const silent = readDrawing(drawSpectrum({ bands: [500, 1000], sounds: [{ label: 'a', levels: [-200, -200] }] }, { title: 'x' }));
    expect(pieces(silent, 0)).toEqual([]);
    expect(outside(silent)).toEqual([]);
  });
});

describe('stations about the dial', () => {
  const d = readDrawing(drawEnvelopeSpectrum(ABOUT_DIAL, { title: 'Stations' }));
  test('the detector has the aerial’s power by the response, and the response its top where the detector has its own', () => {
    const y = upright(d);
    const least = (series: number): number => Math.min(...pieces(d, series).flatMap((p) => p.map((q) => q[1]!)));
    const aerial = ABOUT_DIAL.aerial.map((p) => 120 + 10 * Math.log10(Math.max(p, 1e-30)));
    const detector = aerial.map((l, n) => l + ABOUT_DIAL.response[n]!);
    expect(least(0)).toBeCloseTo(y(Math.max(...aerial)), 1);
    expect(least(1)).toBeCloseTo(y(Math.max(...detector)), 1);
    expect(least(2)).toBeCloseTo(least(1), 1);
  });
  test('stations are flagged, the unit tells the bin, no text runs into another or off the sheet', () => {
    expect([...textsOf(d, 'flag')].sort((a, b) => a.localeCompare(b))).toEqual(['Harbour', 'Hill, the long name of a programme']);
    expect(textsOf(d, 'axis')[1]).toBe('level [dB re 1 µV in 1 kHz]');
    expect(overlaps(d.texts)).toEqual([]);
    expect(outside(d)).toEqual([]);
  });
});
