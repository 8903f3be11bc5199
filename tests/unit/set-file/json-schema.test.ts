import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import * as z from 'zod';
import { LIBRARY } from '#parts';
import { setFileJsonSchema, writeSetFile } from '#set-file';
import { arbitrarySetFile } from './arbitrary.ts';
import { base, type Draft } from './base.ts';

const schema = setFileJsonSchema();
const published = z.fromJSONSchema(schema as never);
const takes = (file: unknown): boolean => published.safeParse(file).success;
/** The base file with the value at one path changed; undefined takes the key away. */
const changed = (path: string, value: unknown): Draft => {
  const draft = base();
  const keys = path.split('.');
  const owner = keys.slice(0, -1).reduce((o, key) => o[key], draft);
  owner[keys.at(-1)!] = value;
  return JSON.parse(JSON.stringify(draft));
};

describe('the published JSON Schema', () => {
  test('says what it is, and is plain JSON', () => {
    expect(schema).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: 'Earshot set file',
      additionalProperties: false,
    });
    expect(JSON.parse(JSON.stringify(schema))).toEqual(schema);
  });

  test('takes every set that is written', () => {
    fc.assert(
      fc.property(arbitrarySetFile, (set) => takes(JSON.parse(writeSetFile(set)))),
      { numRuns: 60 },
    );
  });

  test('takes what a person may write: short forms, parts, other files', () => {
    expect(takes(base())).toBe(true);
    expect(takes({ version: 1, place: base().place })).toBe(true);
    expect(takes({ version: 1, set: { file: 'set.json' }, place: { file: 'town.json' }, drawer: { file: 'drawer.json' } })).toBe(true);
    for (const part of Object.keys(LIBRARY.detectors)) expect(takes(changed('detector', { part, temperature: '10 °C' }))).toBe(true);
    expect(takes(changed('phones.earpiece', { part: 'x', capacitance: '10 nF' }))).toBe(true);
    expect(takes(changed('tank.capacitor', { part: 'x' }))).toBe(true);
    expect(takes(changed('detector', { kind: 'table', csv: 'diode.csv' }))).toBe(true);
  });

  test('refuses foreign keys, missing keys, wrong kinds and wrong types', () => {
    expect(takes(changed('tank.coil.colour', 'red'))).toBe(false);
    expect(takes(changed('tank.coil.turns', undefined))).toBe(false);
    expect(takes(changed('aerial.kind', 'beacon'))).toBe(false);
    expect(takes(changed('tank.coil.turns', true))).toBe(false);
    expect(takes(changed('tank.coil.turns', -1))).toBe(false);
    expect(takes({ ...base(), version: 2 })).toBe(false);
    expect(takes(changed('phones.earpiece', { part: 'x', colour: 'red' }))).toBe(false);
  });

  test('says of every quantity what it is, in which unit, between what, and how it may be written', () => {
    const quantities: Draft[] = [];
    const walk = (node: Draft): void => {
      if (typeof node !== 'object' || node === null) return;
      const kinds = node.anyOf?.map((o: Draft) => o.type);
      if (kinds?.length === 2 && kinds[0] === 'string' && kinds[1] === 'number' && node.anyOf[0].enum === undefined) quantities.push(node);
      for (const child of Object.values(node)) walk(child);
    };
    walk(schema);
    expect(quantities.length).toBeGreaterThan(60);
    // the two ends of a band are texts or numbers of any kind
    const described = quantities.filter((q) => q.description !== undefined);
    expect(quantities.length - described.length).toBeLessThanOrEqual(2);
    for (const q of described) {
      expect(q.description).toMatch(/;/);
      expect(q.examples.length).toBeGreaterThan(0);
    }
  });
});
