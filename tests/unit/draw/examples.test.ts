/**
 * Every drawing here is committed beside its test, for the eye and against unwanted change.
 *
 *     UPDATE_EXAMPLES=1 npx vitest run tests/unit/draw/examples.test.ts
 *
 * writes them anew; look at each one that changed before it is committed.
 */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  drawBands,
  drawCoil,
  drawCurve,
  drawDescribedAerial,
  drawDial,
  drawDialStrip,
  drawEnvelopeSpectrum,
  drawFrame,
  drawPattern,
  drawProfile,
  drawSchematic,
  drawSpectrum,
  drawStations,
  drawWiring,
} from '#draw';
import { DESCRIBED } from './aerial-examples.ts';
import { FRAME, TANKS } from './coil-examples.ts';
import { MEDIUM_WAVE_DIAL, VHF_DIAL } from './dial-examples.ts';
import { AROUND, BAND_LEVELS, HILL, NOT_HEARD, OPEN } from './picture-examples.ts';
import { FORWARD_NORTH, FREE_UPRIGHT, IMPEDANCE, OVER_GROUND, RESPONSE, STATIONS } from './plot-examples.ts';
import { EXAMPLE_SETS, FURTHER_SETS } from './set-examples.ts';
import { ABOUT_DIAL, AT_EAR } from './sound-examples.ts';

const FOLDER = new URL('./examples/', import.meta.url);

const aerial = (name: string) => drawDescribedAerial(DESCRIBED[name]!, { note: 'An example.' });

const EXAMPLES: Readonly<Record<string, () => string>> = {
  ...Object.fromEntries(
    ['rod-case', 'rod-radials', 'rod-earth', 'v-inverted', 'folded', 'beam', 'beam-folded', 'loop-turns', 'given-tee', 'given-loaded'].map(
      (name) => [`aerial-${name}`, () => aerial(name)],
    ),
  ),
  ...Object.fromEntries(
    ['air-wound', 'former', 'flat'].map((name) => [`coil-${name}`, () => drawCoil(TANKS[name]!, { note: 'An example.' })!]),
  ),
  'coil-frame': () => drawFrame(FRAME)!,
  'dial-vhf': () => drawDial(VHF_DIAL, { note: 'An example.' })!,
  'dial-medium-wave': () => drawDial(MEDIUM_WAVE_DIAL, { radius: 45, clockwise: 'falling' })!,
  'dial-strip': () => drawDialStrip(VHF_DIAL),
  ...Object.fromEntries(
    [...Object.entries(EXAMPLE_SETS), ...Object.entries(FURTHER_SETS)].map(([name, set]) => [
      `schematic-${name.replace('.json', '')}`,
      () => drawSchematic(set),
    ]),
  ),
  ...Object.fromEntries(
    ['medium-wave.json', 'channel-detector.json', 'everything'].map((name) => [
      `wiring-${name.replace('.json', '')}`,
      () => drawWiring({ ...EXAMPLE_SETS, ...FURTHER_SETS }[name]!),
    ]),
  ),
  'bands-speech': () => drawBands(BAND_LEVELS, { title: 'What is heard of it', note: 'Made-up levels.' }),
  'bands-silent': () => drawBands(NOT_HEARD, { title: 'What is heard of it', width: 110 }),
  'profile-hill': () => drawProfile(HILL, { title: 'The ground between', mast: 'Radio Gannet' }),
  'profile-open': () => drawProfile(OPEN, { title: 'The ground between', width: 120 }),
  'stations-log': () => drawStations(AROUND, { title: 'Stations around' }),
  'stations-linear': () => drawStations(AROUND.slice(0, 2), { title: 'Stations around', note: 'The field is the median outdoors.' }),
  'pattern-compass': () => drawPattern(FORWARD_NORTH, { title: 'A made-up lobe', stations: STATIONS }),
  'pattern-over-ground': () => drawPattern(OVER_GROUND, { title: 'Lobes over ground' }),
  'pattern-upright': () => drawPattern(FREE_UPRIGHT, { title: 'A made-up lobe, upright', components: ['total', 'horizontal'] }),
  'curve-impedance': () => drawCurve(IMPEDANCE.series, IMPEDANCE.options),
  'curve-response': () => drawCurve(RESPONSE.series, RESPONSE.options),
  'sound-at-ear': () => drawSpectrum(AT_EAR, { title: 'Sound at the ear', note: 'A made-up sound.' }),
  'sound-about-dial': () => drawEnvelopeSpectrum(ABOUT_DIAL, { title: 'Stations about the dial', note: 'Made-up stations.' }),
};

test.each(Object.keys(EXAMPLES))('%s', (name) => {
  const drawn = EXAMPLES[name]!();
  const file = new URL(`${name}.svg`, FOLDER);
  if (process.env.UPDATE_EXAMPLES) writeFileSync(file, drawn);
  expect(drawn).toBe(readFileSync(file, 'utf8'));
});

test('every committed drawing has its example', () => {
  expect(readdirSync(FOLDER).sort((a, b) => (a < b ? -1 : 1))).toEqual(
    Object.keys(EXAMPLES)
      .map((name) => `${name}.svg`)
      .sort((a, b) => (a < b ? -1 : 1)),
  );
});
