import { drawDescribedAerial } from '#draw';
import {
  type BeamResult,
  type BeamWish,
  beamFigures,
  designBeam,
  type Figure,
  GivenError,
  SPEED_OF_LIGHT,
  usualElements,
  type WiresDescription,
} from '#engine';
import { alongBoom, type Group, toCut } from '#tell';
import { type DimensionName, formatFigure, nearestWord, readQuantity, writeExact, writeForPeople } from '#units';
import { BadFile } from './bad-file.ts';
import { type Printed, printGroups } from './group.ts';
import { writeText } from './write-text.ts';

export interface BeamOptions {
  readonly frequency: string;
  readonly boom: string;
  readonly diameter: string;
  readonly elements?: string;
  readonly for: string;
  readonly impedance: string;
  readonly folded?: string;
  readonly metal: string;
  readonly polarisation: string;
  readonly bearing: string;
  readonly draw?: string;
  readonly json?: boolean;
  readonly working?: string;
}

type Shape = BeamResult['shape'];

/** `earshot beam`: lengths and places of the elements, what they do, and what bad cutting does to them. */
export function beamCommand(options: BeamOptions): void {
  const wish = wishOf(options);
  const design = designed(wish, options);
  const shape = cutShape(design.best.shape);
  const description: WiresDescription = { kind: 'wires', shape, height: 0, ground: { kind: 'free-space' } };
  const groups = [summary(wish, design.best, design.start), ...alongBoom(shape), wrongCuts(wish, design), toCut(description)];
  if (options.draw !== undefined) writeText(options.draw, drawDescribedAerial(description));
  printGroups(groups, options, { command: 'beam', aerial: section(shape, wish) });
}

const METALS = ['copper', 'brass', 'aluminium', 'steel', 'silver'] as const;

function wishOf(o: BeamOptions): BeamWish {
  const quantity = (key: 'frequency' | 'boom' | 'diameter' | 'impedance' | 'folded' | 'bearing', dimension: DimensionName): number => {
    const given = o[key]!;
    // a bare number of ohms can be nothing else
    const reading = readQuantity(dimension === 'resistance' && /^[\d.]+$/.test(given) ? Number(given) : given, dimension);
    if (!reading.ok) throw new BadFile(`--${key} ${o[key]}: ${reading.why}\n  ${reading.mend}`);
    return reading.value;
  };
  const word = <W extends string>(key: 'for' | 'metal' | 'polarisation', words: readonly W[]): W => {
    const found = words.find((w) => w === o[key]);
    if (found) return found;
    const near = nearestWord(o[key], words);
    throw new BadFile(`--${key} ${o[key]}: it is none of ${words.join(', ')}${near ? `\n  Did you mean "${near}"?` : ''}`);
  };
  const frequency = quantity('frequency', 'frequency');
  const boom = quantity('boom', 'length');
  return {
    frequency,
    boom,
    elements: o.elements === undefined ? usualElements((boom * frequency) / SPEED_OF_LIGHT) : Number(o.elements),
    diameter: quantity('diameter', 'diameter'),
    metal: word('metal', METALS),
    polarisation: word('polarisation', ['horizontal', 'vertical']),
    bearing: quantity('bearing', 'bearing'),
    driven: o.folded === undefined ? { kind: 'straight' } : { kind: 'folded', spacing: quantity('folded', 'length') },
    goal:
      word('for', ['impedance', 'gain']) === 'gain'
        ? { kind: 'gain' }
        : { kind: 'impedance', resistance: quantity('impedance', 'resistance'), reactance: 0 },
  };
}

/** Options by the engine's names for what they give. */
const OPTION_OF: Readonly<Record<string, keyof BeamOptions>> = { goal: 'impedance' };

function designed(wish: BeamWish, options: BeamOptions) {
  try {
    return designBeam(wish);
  } catch (e) {
    if (!(e instanceof GivenError)) throw e;
    const name = e.path.startsWith('beam.') ? e.path.split('.')[1]! : 'folded';
    const option = OPTION_OF[name] ?? (name as keyof BeamOptions);
    throw new BadFile(`--${option} ${options[option] ?? e.given}: ${e.why}\n  ${e.mend}`);
  }
}

/** To whole millimetres, as it will be cut. */
const millimetres = (length: number): number => Math.round(length * 1e3) / 1e3;

function cutShape(shape: Shape): Shape {
  const behind = millimetres(shape.reflector!.behind);
  return {
    ...shape,
    reflector: { length: millimetres(shape.reflector!.length), behind },
    driven: { ...shape.driven, length: millimetres(shape.driven.length) },
    directors: shape.directors.map((d) => ({ length: millimetres(d.length), ahead: millimetres(d.ahead) })),
  };
}

function summary(wish: BeamWish, best: BeamResult, start: BeamResult): Group {
  const { goal, frequency, boom, elements, diameter } = wish;
  const wanted =
    goal.kind === 'gain' ? 'for the greatest gain' : `for the most power into ${writeForPeople(goal.resistance, 'resistance', 3)}`;
  const published = (figures: readonly Figure[]) => figures.filter((f) => f.name === 'beam.gain' || f.name === 'beam.match');
  return {
    heading: `Beam of ${elements} elements for ${writeForPeople(frequency, 'frequency')}, boom ${writeForPeople(boom, 'length')}, Ø ${writeForPeople(diameter, 'length')}, ${wanted}`,
    figures: [
      ...beamFigures(best, wish),
      ...published(beamFigures(start, wish)).map((f) => ({
        ...f,
        name: f.name.replace('beam.', 'beam.start.'),
        label: `${f.label}, of the published beam it was begun from`,
      })),
    ],
    remarks: goal.kind === 'gain' && best.impedance.re < 20 ? [LOW_RESISTANCE] : [],
  };
}

const LOW_RESISTANCE =
  'so low a resistance is hard to match and loses much in poor joints: --for impedance gives up a little gain for one that can be used';

/** Bad cutting changes little: it shows in the second decimal. */
const toAHundredth = (f: Figure): string =>
  f.value === null
    ? 'none'
    : f.unit.startsWith('dB')
      ? `${f.value.toFixed(2)} ${f.unit.includes('isotropic') ? 'dBi' : 'dB'}`
      : formatFigure(f.value, f.unit, 3);

/** What the beam does with an element cut short or long. */
function wrongCuts(wish: BeamWish, { best, cutting }: ReturnType<typeof designBeam>): Printed {
  const mm = `${cutting.error * 1e3} mm`;
  const lines = [
    { name: 'as designed', result: best },
    ...cutting.elements.flatMap((e) => [
      { name: `${e.element} ${mm} short`, result: e.short },
      { name: `${e.element} ${mm} long`, result: e.long },
    ]),
    { name: `all ${mm} short`, result: cutting.all.short },
    { name: `all ${mm} long`, result: cutting.all.long },
  ];
  return {
    heading: `cut wrong by ${mm}`,
    figures: [],
    remarks: [],
    rows: lines.map((l) => beamFigures(l.result, wish)),
    rowNames: { head: 'element', names: lines.map((l) => l.name) },
    rowText: toAHundredth,
  };
}

/** The aerial section of a set file. */
function section(shape: Shape, { bearing }: BeamWish): Record<string, unknown> {
  const mm = (length: number) => `${Math.round(length * 1e3)} mm`;
  const { behind } = shape.reflector!;
  const { element } = shape.driven;
  return {
    kind: 'wires',
    shape: 'beam',
    bearing: writeExact(bearing, 'bearing'),
    polarisation: shape.polarisation,
    elements: [
      { length: mm(shape.reflector!.length), position: '0 mm' },
      { length: mm(shape.driven.length), position: mm(behind) },
      ...shape.directors.map((d) => ({ length: mm(d.length), position: mm(behind + d.ahead) })),
    ],
    ...(element.kind === 'folded' && { drivenElement: { kind: 'folded', spacing: writeExact(element.spacing, 'length') } }),
    diameter: writeExact(shape.diameter, 'diameter'),
    metal: shape.metal,
  };
}
