import { readdirSync, readFileSync } from 'node:fs';
import type { SetDescription } from '#engine';
import { readSetFile } from '#set-file';

const FOLDER = new URL('../../../examples/', import.meta.url);
const read = (name: string) => readFileSync(new URL(name, FOLDER), 'utf8');

/** All example sets by the names of their files; a place or a drawer alone is no set. */
export const EXAMPLE_SETS: Readonly<Record<string, SetDescription>> = Object.fromEntries(
  readdirSync(FOLDER)
    .filter((name) => name.endsWith('.json') && 'tank' in (JSON.parse(read(name)) as object))
    .map((name) => {
      const outcome = readSetFile(read(name), { read });
      if (!outcome.ok) throw new Error(`${name} is no set file`);
      return [name, outcome.value];
    }),
);

const rod = EXAMPLE_SETS['rod-and-drop-wire.json']!;
const medium = EXAMPLE_SETS['medium-wave.json']!;
const link = { kind: 'link', turns: 2, innerDiameter: 12e-3, wireDiameter: 1e-3, pitch: 1.5e-3, gap: 1e-3 } as const;

/** Sets that no file among the examples holds: every part there is, and the shapes of coupling that are left. */
export const FURTHER_SETS: Readonly<Record<string, SetDescription>> = {
  everything: {
    ...medium,
    aerial: {
      ...EXAMPLE_SETS['channel-detector.json']!.aerial,
      feeder: { length: 4, impedance: 75, velocityFactor: 0.8, loss: 0, lossFrequency: 1e8 },
    },
    tank: {
      ...rod.tank,
      aerialCoupling: link,
      detectorCoupling: link,
      capacitor: { ...rod.tank.capacitor, series: 47e-12, parallel: 3.3e-12 },
    },
    phones: { ...medium.phones, bypass: 220e-12, load: 470e3, choke: { inductance: 10, resistance: 800 }, blocking: 100e-9 },
  },
  'coil-is-aerial': {
    ...rod,
    aerial: { kind: 'coil', axis: { kind: 'vertical' } },
    tank: { ...tankWithoutAerial(rod), detectorCoupling: { kind: 'series-capacitor', capacitance: 10e-12 }, detectorReturn: 470e3 },
    detector: {
      kind: 'table',
      voltage: [-0.2, -0.1, 0, 0.1, 0.2],
      current: [-1.2e-7, -1e-7, 0, 1e-6, 1e-5],
      capacitance: 0.5e-12,
      seriesResistance: 0,
      temperature: 293,
    },
  },
};

function tankWithoutAerial({ tank }: SetDescription): SetDescription['tank'] {
  const { aerialCoupling: _, ...rest } = tank;
  return rest;
}
