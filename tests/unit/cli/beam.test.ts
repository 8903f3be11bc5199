import { mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { earshot } from './run.ts';

const folder = mkdtempSync(join(tmpdir(), 'earshot-'));
const EXAMPLE = 'examples/beam-from-its-elements.json';
// biome-ignore lint/suspicious/noExplicitAny: answers are looked into key by key
type Answer = any;
const asked = (...args: string[]): Answer => {
  const r = earshot(...args, '--json');
  if (r.code !== 0) throw new Error(r.err);
  return JSON.parse(r.out);
};
const group = (answer: Answer, name: RegExp): Answer => answer.groups.find((g: Answer) => name.test(g.name));

describe('earshot beam', () => {
  const design = asked('beam', '--frequency', '94.6MHz', '--boom', '1.7 m', '--bearing', '75 deg');

  test('as many elements as the published beams of that boom; what 2 mm of cutting do', () => {
    const boom = group(design, /along the boom/).rows;
    expect(boom).toHaveLength(4);
    expect(boom.at(-1)['boom.position'].value).toBeCloseTo(1.7, 3);
    const wrong = group(design, /cut wrong/).rows;
    expect(wrong.map((r: Answer) => r.name)).toEqual([
      'as designed',
      ...['reflector', 'driven element', 'director 1', 'director 2', 'all'].flatMap((e) => [`${e} 2 mm short`, `${e} 2 mm long`]),
    ]);
    for (const row of wrong) expect(Math.abs(row['beam.gain'].value - wrong[0]['beam.gain'].value)).toBeLessThan(0.2);
  });
  test('its section of a set file, read and solved, does what was promised; the example is that beam', () => {
    const example = JSON.parse(readFileSync(EXAMPLE, 'utf8'));
    const file = join(folder, 'designed.json');
    writeFileSync(file, JSON.stringify({ ...example, place: { file: resolve('examples/fenmarket.json') }, aerial: design.aerial }));
    const whole = group(asked('aerial', file, '--station', 'Radio Gannet'), /^Beam/).figures;
    const [promised] = design.groups;
    expect(whole['pattern.gain'].value).toBeCloseTo(promised.figures['beam.gain'].value, 0.8);
    expect(promised.figures['beam.match'].value).toBeGreaterThan(0.9);
    const { elements, bearing } = example.aerial;
    expect({ elements, bearing: bearing.replace(' deg', '°') }).toEqual({
      elements: design.aerial.elements,
      bearing: design.aerial.bearing,
    });
  });
  test('the greatest gain is greater, at a resistance that is hard to use; for another load it is another beam', () => {
    const at = ['--frequency', '98MHz', '--boom', '1.2 m'];
    const best = (answer: Answer) => answer.groups[0].figures;
    const [gain, low, folded] = [
      asked('beam', ...at, '--for', 'gain'),
      asked('beam', ...at, '--impedance', '25 ohm'),
      asked('beam', ...at, '--impedance', '240', '--folded', '5 cm'),
    ].map(best);
    expect(gain['beam.gain'].value).toBeGreaterThan(low['beam.gain'].value);
    expect(gain['beam.resistance'].value).toBeLessThan(20);
    expect(low['beam.match'].value).toBeGreaterThan(0.9);
    expect(folded['beam.resistance'].value).toBeGreaterThan(80);
    expect(earshot('beam', ...at, '--for', 'gain').out).toContain('hard to match');
    const draw = join(folder, 'beam.svg');
    expect(earshot('beam', ...at, '--draw', draw).code).toBe(0);
    expect(readFileSync(draw, 'utf8')).toContain('</svg>');
  });
  test('what cannot be is told by the name of the option', () => {
    const at = ['--frequency', '98MHz', '--boom', '1.2 m'];
    expect(earshot('beam', '--frequency', '98MHz').code).toBe(2);
    for (const [args, message] of [
      [['--frequency', '98', '--boom', '1.2 m'], /--frequency 98:[\s\S]*MHz/],
      [['--frequency', '98MHz', '--boom', '10 cm'], /--boom 10 cm:/],
      [['--frequency', '98MHz', '--boom', '30 m'], /--boom 30 m:/],
      [[...at, '--diameter', '20 cm'], /--diameter 20 cm:/],
      [[...at, '--for', 'gian'], /--for gian[\s\S]*"gain"/],
      [[...at, '--impedance', '-5 ohm'], /--impedance -5 ohm:/],
      [[...at, '--folded', '5 mm'], /--folded 5 mm:/],
      [[...at, '--draw', join(folder, 'none', 'b.svg')], /b\.svg/],
    ] as const) {
      const r = earshot('beam', ...args);
      expect(r.code, args.join(' ')).toBe(3);
      expect(r.err, args.join(' ')).toMatch(message);
    }
  });
});
