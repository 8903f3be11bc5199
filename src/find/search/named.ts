import type { PartCategory } from '#parts';
import { bandsOf, type SetFile, type UsedPart, WIRE_VALUES, writeSetFile } from '#set-file';
import type { Found } from './answer.ts';
import type { Design } from './design.ts';
import type { Space } from './space.ts';
import { partsOf } from './stock.ts';

interface Name {
  readonly path: string;
  readonly category: PartCategory;
  readonly name: string;
}

/** The parts of a design by the names they have in the drawer. */
function namesOf({ stock }: Space, d: Design): readonly Name[] {
  const transformer = d.transformer > 0 ? stock.transformers[d.transformer - 1] : undefined;
  return [
    { path: 'detector', category: 'detectors', name: stock.detectors[d.detector]!.name },
    { path: 'phones.earpiece', category: 'earpieces', name: stock.earpieces[d.earpiece]!.name },
    ...(transformer ? [{ path: 'phones.transformer', category: 'transformers' as const, name: transformer.name }] : []),
    { path: 'tank.capacitor', category: 'capacitors', name: stock.capacitors[d.capacitor]!.name },
    { path: 'tank.coil.wire', category: 'wires', name: stock.wires[d.wire]!.name },
  ];
}

/** The parts of a design with the bands they carry, as a set file that names them gives them. */
export function usedParts(space: Space, d: Design): readonly UsedPart[] {
  const parts = partsOf(space.drawer);
  return namesOf(space, d).map(({ path, category, name }) => {
    const part = parts[category][name]!;
    return {
      path,
      name,
      title: part.title ?? name,
      source: part.source ?? "the user's own part",
      estimate: part.estimate ?? false,
      band: bandsOf(category, part),
    };
  });
}

type Plain = Record<string, unknown>;
/** A set file of what was found: parts by their names, with the drawer that holds them, so that their bands go with it. */
export function setFileOf(space: Space, { design, set }: Found, name: string, notes: string): string {
  const { place, listener, drawer } = space;
  const whole: SetFile = { name, notes, place, ...set, ...listener, drawer };
  const file = JSON.parse(writeSetFile(whole)) as Plain & { tank: Plain & { coil: Plain }; phones: Plain };
  for (const { path, name: part } of namesOf(space, design)) {
    if (path === 'detector') file.detector = { part };
    else if (path === 'tank.coil.wire') {
      for (const key of WIRE_VALUES) delete file.tank.coil[key];
      file.tank.coil.wire = { part };
    } else {
      const [section, key] = path.split('.') as ['phones' | 'tank', string];
      const { parallel } = file[section][key] as Plain;
      // a capacitor put across the tuning capacitor is no part of it
      file[section][key] = { part, ...(design.across > 0 && key === 'capacitor' && { parallel }) };
    }
  }
  return `${JSON.stringify(file, null, 2)}\n`;
}
