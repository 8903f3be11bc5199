import type * as z from 'zod/mini';
import { safeParse } from 'zod/mini';
import type { DetectorDescription, Earpiece, Transformer, VariableCapacitor } from '#engine';
import { PART_CATEGORIES, type Part, type PartCategory, type Parts } from '#parts';
import { DIMENSIONS, showGiven } from '#units';
import { assembleDetector } from './assemble/detector.ts';
import { assembleEarpiece, assembleTransformer } from './assemble/phones.ts';
import { assembleCapacitor, assembleWire, type WireOnShelf } from './assemble/tank.ts';
import { checkDetector } from './checks/detector.ts';
import { checkEarpiece, checkTransformer } from './checks/phones.ts';
import { checkCapacitor } from './checks/tank.ts';
import { complain } from './forms/complaints.ts';
import { detectorForm } from './forms/detector-form.ts';
import { wireForm } from './forms/drawer-form.ts';
import { earpieceForm, transformerForm } from './forms/phones-form.ts';
import { capacitorForm } from './forms/tank-form.ts';
import { dimensionWithin, schemaOfEntry } from './forms/walk.ts';
import type { Path } from './json/positions.ts';
import type { Report } from './problem.ts';
import type { Band } from './set-file.ts';

const FORMS = {
  detectors: detectorForm,
  earpieces: earpieceForm,
  transformers: transformerForm,
  capacitors: capacitorForm,
  wires: wireForm,
} as const;

/** Parts as the engine knows them, by name. */
export interface Shelf {
  readonly detectors: Readonly<Record<string, DetectorDescription>>;
  readonly earpieces: Readonly<Record<string, Earpiece>>;
  readonly transformers: Readonly<Record<string, Transformer>>;
  readonly capacitors: Readonly<Record<string, VariableCapacitor>>;
  readonly wires: Readonly<Record<string, WireOnShelf>>;
}

/**
 * Finds what is wrong with a part: values that its section does not know or that cannot be, a band of something that has no range.
 *
 * A detector measured in a CSV file is not looked into: it is read where it is used.
 */
export function checkPart(category: PartCategory, part: Part, path: Path, report: Report): void {
  if ('csv' in part.values) return;
  const at = [...path, 'values'];
  const parsed = safeParse(FORMS[category], part.values);
  if (parsed.success) checkForm(category, parsed.data, at, report);
  else complain(FORMS[category], part.values, parsed.error.issues, at, report, () => []);
  for (const [key, pair] of Object.entries(part.band ?? {})) readBand(category, part, key, pair, [...path, 'band', key], report);
}

function checkForm(category: PartCategory, form: unknown, path: Path, report: Report): void {
  switch (category) {
    case 'detectors':
      checkDetector(form as z.output<typeof detectorForm>, path, report);
      return;
    case 'earpieces':
      checkEarpiece(form as z.output<typeof earpieceForm>, path, report);
      return;
    case 'transformers':
      checkTransformer(form as z.output<typeof transformerForm>, path, report);
      return;
    case 'capacitors':
      checkCapacitor(form as z.output<typeof capacitorForm>, path, report);
      return;
    case 'wires':
      return;
  }
}

function readBand(
  category: PartCategory,
  part: Part,
  key: string,
  pair: readonly [string | number, string | number],
  path: Path,
  report: Report,
): Band | null {
  const found = schemaOfEntry(FORMS[category], part.values, key);
  const dimension = found && dimensionWithin(found);
  if (!dimension) {
    report(path, JSON.stringify(key), 'it is no value that has a range here', 'Give a band for a quantity of the part.');
    return null;
  }
  if (!Array.isArray(pair) || pair.length !== 2) {
    report(path, showGiven(pair), 'a band is a pair: low and high', 'Write it like ["10 pF", "15 pF"].');
    return null;
  }
  const ends = pair.map((given, i) => {
    const parsed = safeParse(found, given);
    if (parsed.success && typeof parsed.data === 'number') return parsed.data;
    if (!parsed.success) complain(found, given, parsed.error.issues, [...path, i], report, () => []);
    return null;
  });
  const [low, high] = ends as [number | null, number | null];
  if (low === null || high === null) return null;
  if (low > high) {
    report(path, `${pair[0]} to ${pair[1]}`, 'the low end lies above the high one', 'Exchange the two.');
    return null;
  }
  return { key, low, high, unit: DIMENSIONS[dimension].symbol || '1' };
}

/** The bands of a part in SI units; what cannot be read is left out, `checkPart` complains of it. */
export function bandsOf(category: PartCategory, part: Part): readonly Band[] {
  return Object.entries(part.band ?? {})
    .map(([key, pair]) => readBand(category, part, key, pair, [], () => {}))
    .filter((band) => band !== null);
}

/** Every part that can be put in without reading another file, for a search through what there is. */
export function shelfOf(parts: Parts): Shelf {
  const shelf: Record<PartCategory, Record<string, unknown>> = {
    detectors: {},
    earpieces: {},
    transformers: {},
    capacitors: {},
    wires: {},
  };
  for (const category of PART_CATEGORIES)
    for (const [name, part] of Object.entries(parts[category])) {
      let sound = !('csv' in part.values);
      checkPart(category, part, [], () => {
        sound = false;
      });
      if (sound) shelf[category][name] = assemblePart(category, name, part);
    }
  return shelf as unknown as Shelf;
}

function assemblePart(category: PartCategory, name: string, part: Part): unknown {
  const parsed = safeParse(FORMS[category], category === 'earpieces' ? { name: part.title ?? name, ...part.values } : part.values);
  // checkPart has found it sound
  const form = parsed.data as never;
  switch (category) {
    case 'detectors':
      return assembleDetector(form);
    case 'earpieces':
      return assembleEarpiece(form);
    case 'transformers':
      return assembleTransformer(form);
    case 'capacitors':
      return assembleCapacitor(form);
    case 'wires':
      return assembleWire(form);
  }
}
