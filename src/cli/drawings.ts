import { join } from 'node:path';
import { drawAnyAerial, drawCoil, drawDial, drawDialStrip, drawJig, drawRuler, drawSchematic, drawWiring } from '#draw';
import { type Received, receivedBy } from '#sheet';
import { printJson } from './figures-json.ts';
import { checked, load } from './load.ts';
import { makeFolder } from './make-folder.ts';
import { pickStations } from './pick.ts';
import { table } from './table.ts';
import { whole } from './whole.ts';
import { writeText } from './write-text.ts';

export interface DrawingsOptions {
  readonly to: string;
  readonly station?: string;
  readonly json?: true;
}

/** A drawing as a file of its own. */
interface Drawing {
  readonly file: string;
  readonly what: string;
  /** how large it is drawn: as it is, to the scale written on it, or to none */
  readonly size: 'true to size' | 'to scale' | 'not to scale';
  readonly svg: string;
}

/** What a set has no drawing of, and why. */
interface Without {
  readonly what: string;
  readonly why: string;
}

/** `earshot drawings`: every drawing of a set as an SVG file. */
export function drawingsCommand(file: string, { to, station, json }: DrawingsOptions): void {
  const loaded = load(file);
  const { place } = whole(loaded);
  const names = place.stations.map((s) => s.name);
  const index = station === undefined ? undefined : pickStations(names, station)[0];
  const { drawings, without } = checked(loaded, () => drawingsOf(receivedBy({ ...loaded, place }, index), loaded.name));
  makeFolder(to);
  for (const d of drawings) writeText(join(to, d.file), d.svg);
  if (json) {
    printJson({ file, folder: to, drawings: drawings.map(({ svg: _, ...d }) => d), without });
    return;
  }
  console.log(
    table(
      [
        { head: 'file', align: 'left' },
        { head: 'drawn', align: 'left' },
        { head: 'what', align: 'left' },
      ],
      drawings.map((d) => [d.file, d.size, d.what]),
    ),
  );
  for (const w of without) console.log(`No ${w.what}: ${w.why}`);
}

function drawingsOf(
  { meant, reception, dial }: Received,
  name: string,
): { readonly drawings: readonly Drawing[]; readonly without: readonly Without[] } {
  const { set } = meant;
  const { inductance } = reception.receiver.tank;
  const titled = (what: string) => ({ title: name === '' ? what : `${what}: ${name}` });
  const drawings: Drawing[] = [];
  const without: Without[] = [];
  const take = (file: string, size: Drawing['size'], what: string, svg: string | null, why: string): void => {
    if (svg === null) without.push({ what: file.replace('.svg', '').replace('-', ' '), why });
    else drawings.push({ file, what, size, svg });
  };
  const always = '';
  take('circuit.svg', 'not to scale', 'what is joined to what', drawSchematic(set, { ...titled('Circuit'), inductance }), always);
  take('wiring.svg', 'not to scale', 'the parts as they lie on the bench', drawWiring(set, { ...titled('Wiring'), inductance }), always);
  const byValues = 'the coil is given by its values, not by its shape.';
  take('coil.svg', 'to scale', 'the coil from the side and from its end, and how to wind it', drawCoil(set.tank, titled('Coil')), byValues);
  const jig = drawJig(set.tank);
  if (jig && 'pieces' in jig)
    jig.pieces.forEach((svg, i) => {
      const several = jig.pieces.length > 1;
      take(
        several ? `jig-strip-${i + 1}.svg` : 'jig-strip.svg',
        'true to size',
        several ? `the strip to wind the coil by, piece ${i + 1} of ${jig.pieces.length}` : 'the strip to wind the coil by',
        svg,
        always,
      );
    });
  else take('jig-strip.svg', 'true to size', '', null, jig?.none ?? byValues);
  take(
    'dial.svg',
    'true to size',
    'the scale to cut out, with the stations',
    drawDial(dial, titled('Dial')),
    'the capacitor turns nearly once round or more; the dial strip shows it.',
  );
  take('dial-strip.svg', 'not to scale', 'the scale laid out straight', drawDialStrip(dial, titled('Dial')), always);
  take(
    'aerial.svg',
    'to scale',
    'the aerial and what to cut for it',
    drawAnyAerial(set.aerial, titled('Aerial')),
    aerialWhy(set.aerial.kind),
  );
  take('ruler.svg', 'true to size', 'a ruler to check a print with', drawRuler(), always);
  return { drawings, without };
}

function aerialWhy(kind: Received['meant']['set']['aerial']['kind']): string {
  if (kind === 'coil') return 'the coil is the aerial.';
  return kind === 'electrical' ? 'it is given by what it does, not by its shape.' : 'it lies on the ground.';
}
