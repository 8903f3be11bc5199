import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { describe, expect, test } from 'vitest';
import { earshot } from './run.ts';

const BEAM = 'examples/beam-from-its-elements.json';
const ROD = 'examples/rod-and-drop-wire.json';
const folder = mkdtempSync(join(tmpdir(), 'earshot-'));
const TOWN = { file: resolve('examples/fenmarket.json') };
// biome-ignore lint/suspicious/noExplicitAny: answers are looked into key by key
type Answer = any;

/** The rod's example with another aerial, written to a file. */
function withAerial(name: string, aerial: unknown): string {
  const path = join(folder, `${name}.json`);
  writeFileSync(path, JSON.stringify({ ...JSON.parse(readFileSync(ROD, 'utf8')), place: TOWN, aerial }, null, 2));
  return path;
}
const rod = JSON.parse(readFileSync(ROD, 'utf8')).aerial;
const box = { kind: 'box', width: '15 cm', depth: '5 cm', height: '10 cm' };
const asked = (...args: string[]): Answer => {
  const r = earshot(...args, '--json');
  if (r.code !== 0) throw new Error(r.err);
  return JSON.parse(r.out);
};
const group = (answer: Answer, name: string | RegExp): Answer =>
  answer.groups.find((g: Answer) => (typeof name === 'string' ? g.name === name : name.test(g.name)));

describe('earshot aerial, for an aerial of wires', () => {
  const text = earshot('aerial', BEAM);
  const answer = asked('aerial', BEAM);

  test('says what it is, over the band, in pattern, to cut, and toward each station', () => {
    expect(text.code).toBe(0);
    expect(text.out).toMatch(/Beam of 4 elements, at 94\.6 MHz \(Radio Gannet\)/);
    for (const what of ['resonance', 'half-power width', 'over the band', 'to cut', 'along the boom', 'what hears it', 'Radio Gannet'])
      expect(text.out).toContain(what);
    // to the millimetre, as the file has it
    for (const length of ['1529 mm', '2       ', '763 mm', '1443 mm', '1441 mm', '590 mm', '1700 mm']) expect(text.out).toContain(length);
    expect(text.out + text.err).not.toMatch(/NaN|Infinity|undefined|null/);
  });
  test('as JSON: the same as figures, each with value, unit, method and working', () => {
    const band = group(answer, 'over the band').rows;
    expect(band).toHaveLength(11);
    expect(band[0]['band.frequency'].value).toBe(87.5e6);
    expect(band.at(-1)['band.frequency'].value).toBe(108e6);
    for (const g of answer.groups)
      for (const f of [
        ...Object.values(g.figures),
        ...(g.rows ?? []).flatMap(({ name: _, ...r }: Answer) => Object.values(r)),
      ] as Answer[]) {
        expect(f.value === null || Number.isFinite(f.value)).toBe(true);
        expect(f.unit.length).toBeGreaterThan(0);
        expect(f.method.length).toBeGreaterThan(2);
        expect(f.working.source.length).toBeGreaterThan(2);
      }
    expect(group(answer, 'along the boom').rows.map((r: Answer) => [r.name, r['boom.position'].value])).toEqual([
      ['reflector', 0],
      ['driven element', expect.closeTo(0.59, 9)],
      ['director 1', expect.closeTo(1.045, 9)],
      ['director 2', expect.closeTo(1.7, 9)],
    ]);
  });
  test('a beam cut for Radio Gannet looks towards it and matches its line there', () => {
    const whole = group(asked('aerial', BEAM, '--station', 'Radio Gannet'), /^Beam of 4/).figures;
    expect(whole['pattern.bearing'].value).toBeCloseTo((75 * Math.PI) / 180, 2);
    expect(whole['pattern.gain'].value).toBeGreaterThan(9);
    expect(whole['pattern.frontToBack'].value).toBeGreaterThan(7);
    expect(Math.abs(whole['aerial.resistance'].value - 75)).toBeLessThan(12);
    expect(Math.abs(whole['aerial.reactance'].value)).toBeLessThan(12);
    expect(whole['aerial.powerBalance'].value).toBeCloseTo(1, 2);
  });
  test('workings of the new figures can be asked for', () => {
    for (const name of ['aerial.resonance', 'share.emf']) {
      const r = earshot('aerial', BEAM, '--station', 'Fen Talk', '--working', name);
      expect(r.code, name).toBe(0);
      expect(r.out, name).toMatch(/formula[\s\S]*source/);
    }
  });
  test('drawings: to scale with the cutting lengths, the pattern both ways with the stations, the impedance', () => {
    const [draw, pattern, impedance] = ['d.svg', 'p.svg', 'z.svg'].map((f) => join(folder, f)) as [string, string, string];
    const r = earshot('aerial', BEAM, '--draw', draw, '--pattern', pattern, '--impedance', impedance, '--json');
    expect(r.code).toBe(0);
    expect(JSON.parse(r.out).stage).toBe('aerial');
    expect(r.err.trim().split('\n')).toHaveLength(4);
    const svg = (path: string) => readFileSync(path, 'utf8');
    for (const path of [draw, pattern, impedance, join(folder, 'p-upright.svg')])
      expect(svg(path)).toMatch(/^(<\?xml|<svg)[\s\S]*<\/svg>\s*$/);
    for (const length of ['1529', '763', '1443', '1441', '590', '1700']) expect(svg(draw)).toContain(length);
    for (const name of ['Fen Talk', 'Radio Gannet', 'Lantern', 'Estuary Two']) {
      expect(svg(pattern)).toContain(name);
      expect(svg(impedance)).toContain(name);
    }
    expect(svg(impedance)).toContain('resistance');
  });
  test('--segments forces the number; one that does not do is refused by the name of the option', () => {
    const forced = asked('aerial', ROD, '--segments', '41', '--station', 'Lantern');
    expect(group(forced, /^Rod/).figures['aerial.segments'].value).toBe(41);
    // and moves the impedance by about what the test of convergence says
    const chosen = group(asked('aerial', ROD, '--station', 'Lantern'), /^Rod/).figures;
    const moved = Math.abs(group(forced, /^Rod/).figures['aerial.resistance'].value - chosen['aerial.resistance'].value);
    expect(moved).toBeGreaterThan(0);
    expect(moved).toBeLessThan(2 * chosen['aerial.cuttingError'].value * chosen['aerial.resistance'].value);
    for (const n of ['1', 'many', '100000'])
      expect(earshot('aerial', ROD, '--segments', n)).toMatchObject({ code: 3, err: expect.stringContaining(`--segments ${n}`) });
  });
  test('what only wires have is refused for other aerials, with the way to have it', () => {
    for (const option of ['--draw', '--pattern', '--segments'])
      expect(earshot('aerial', 'examples/dipole-and-small-coil.json', option, '9')).toMatchObject({
        code: 3,
        err: expect.stringMatching(new RegExp(`${option}[\\s\\S]*"kind": "wires"`)),
      });
    expect(existsSync('9')).toBe(false);
    // the impedance of a dipole by closed form can be drawn all the same
    expect(earshot('aerial', 'examples/dipole-and-small-coil.json', '--impedance', join(folder, 'closed.svg')).code).toBe(0);
    expect(earshot('aerial', BEAM, '--draw', join(folder, 'none', 'x.svg'))).toMatchObject({
      code: 3,
      err: expect.stringContaining('x.svg'),
    });
  });
  test('height and field that do not belong together are pointed out, where there is a ground', () => {
    const low = { ...rod, height: '2 m' };
    expect(earshot('aerial', withAerial('low', low)).out).not.toContain('place.site.height');
    expect(earshot('aerial', withAerial('low-on-ground', { ...low, ground: 'wet' })).out).toContain('place.site.height');
  });
  test('every shape goes through the command', () => {
    const shapes = {
      rod: { ...rod, against: box },
      v: {
        kind: 'wires',
        shape: 'dipole',
        length: '1.44 m',
        orientation: { kind: 'horizontal', broadside: 'E' },
        includedAngle: '120 deg',
      },
      square: { kind: 'wires', shape: 'square-loop', side: '78 cm', bearing: 'E' },
      list: {
        kind: 'wires',
        shape: 'free-list',
        wires: [{ from: ['-0.7 m', '0 m', '3 m'], to: ['0.7 m', '0 m', '3 m'] }],
        feed: { wire: 0 },
      },
    };
    for (const [name, aerial] of Object.entries(shapes)) {
      const file = withAerial(name, aerial);
      const answer = asked(
        'aerial',
        file,
        '--station',
        'Fen Talk',
        '--draw',
        join(folder, `${name}.svg`),
        '--pattern',
        join(folder, `${name}-p.svg`),
      );
      expect(JSON.stringify(answer), name).not.toMatch(/NaN|Infinity|undefined/);
      const shares = group(answer, 'Fen Talk').rows;
      const sum = shares.reduce((all: number, row: Answer) => all + row['share.emf'].value, 0);
      expect(sum, name).toBeCloseTo(1, 6);
    }
  });
});

test('sweeps reach a rod and the elements of a beam, ten millimetres at a time', () => {
  const rows = asked('sweep', ROD, 'aerial.length', '66 cm', '76 cm', '--steps', '11', '--station', 'Lantern').rows;
  expect(rows.map((r: Answer) => r.value.value)).toEqual(Array.from({ length: 11 }, (_, k) => expect.closeTo(0.66 + 0.01 * k, 9)));
  const levels = rows.map((r: Answer) => r.figures['ladder.soundLevel'].value);
  for (let k = 1; k < levels.length; k++) {
    const step = Math.abs(levels[k] - levels[k - 1]);
    expect(step).toBeGreaterThan(1e-4);
    // tuned broadly: no centimetre matters more than a third of a decibel
    expect(step).toBeLessThan(0.34);
  }
  const csv = earshot(
    'sweep',
    BEAM,
    'aerial.elements.3.length',
    '1.40 m',
    '1.48 m',
    '--steps',
    '3',
    '--station',
    'Radio Gannet',
    '--csv',
    '--show',
    'ladder.emf',
  );
  expect(csv.code).toBe(0);
  expect(csv.out.trim().split('\n')).toHaveLength(4);
});

test('a wire to earth carries the caution of one', () => {
  const earthed = withAerial('earthed', { ...rod, against: { kind: 'earth-wire', length: '8 m' } });
  expect(earshot('hear', earthed, '--no-advice', '--station', 'Lantern').out).toContain('Earth: use a rod of your own');
});
