// Draws docs/pictures/two-humps.svg, the demo set turned across its station, and wiring.svg, as it lies on the bench. Run by hand after the engine or the demo changes.
import { spawnSync } from 'node:child_process';
import { copyFileSync, mkdirSync, writeFileSync } from 'node:fs';
import { rolldown } from 'rolldown';

mkdirSync('.cache/picture', { recursive: true });
writeFileSync(
  '.cache/picture/main.ts',
  `import { readFileSync } from 'node:fs';
import { assemble, bestDial, evaluate, standAt } from '#engine';
import { drawCurve } from '#draw';
import { readSetFile } from '#set-file';
const read = (path: string) => readFileSync('examples/' + path, 'utf8');
const result = readSetFile(read('dipole-and-small-coil.json'), { read });
if (!result.ok) throw new Error(JSON.stringify(result.problems));
const { place, aerial, tank, detector, phones, ear, programme } = result.value;
const reception = standAt(place!, assemble({ aerial, tank, detector, phones }, { ear, programme }));
const dial = bestDial(reception, 0);
if ('missing' in dial) throw new Error('the demo reaches its station');
const degree = Math.PI / 180;
const points = Array.from({ length: 241 }, (_, k) => {
  const angle = dial.resonance.angle + ((k - 120) / 120) * 12 * dial.resonance.halfWidth;
  return { x: angle / degree, y: Math.max(0, evaluate(reception, 0, angle).rated.earpiece[1]! * 1e3) };
});
export const svg = drawCurve([{ label: 'audio', points }], {
  title: 'The dial turned across ' + place!.stations[0]!.name + ': one station, two humps',
  x: { label: 'dial angle', unit: 'degrees' },
  y: { label: 'audio at the earpiece', unit: 'mV rms', from: 0 },
  marks: dial.points.map((p) => ({ kind: 'x' as const, x: p.angle / degree, label: 'tank ' + p.side + ' the station' })),
  note: 'On the station itself the slope is flat and the set is nearly dumb; it speaks on either flank.',
} as never);
`,
);
const bundle = await rolldown({ input: './.cache/picture/main.ts', platform: 'node' });
await bundle.write({ file: '.cache/picture/main.mjs', format: 'es' });
const { svg } = await import(new URL('../.cache/picture/main.mjs', import.meta.url).href);
writeFileSync('docs/pictures/two-humps.svg', `${svg.trim()}\n`);
spawnSync(process.execPath, ['dist/cli/earshot.mjs', 'drawings', 'examples/dipole-and-small-coil.json', '--to', '.cache/picture'], {
  stdio: 'inherit',
});
copyFileSync('.cache/picture/wiring.svg', 'docs/pictures/wiring.svg');
