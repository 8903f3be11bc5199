import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import { describe, expect, test } from 'vitest';
import { LONGEST_LINK, readShared, shareFragment } from '../../../src/app/model/share-link.ts';
import { isShared } from '../../../src/app/model/share-mark.ts';

const json = (name: string): unknown => JSON.parse(readFileSync(`examples/${name}`, 'utf8'));
const files = { 'fenmarket.json': readFileSync('examples/fenmarket.json', 'utf8'), 'other.json': '{}' };
const demo = { document: json('dipole-and-small-coil.json'), files };
/** a link as a stranger would make it */
const forged = (payload: unknown): string =>
  `#set1=${deflateRawSync(typeof payload === 'string' ? payload : JSON.stringify(payload)).toString('base64url')}`;
const refusal = async (fragment: string): Promise<string> => {
  const read = await readShared(fragment);
  if (read.ok) throw new Error('it was taken');
  expect(read.mend).not.toBe('');
  return read.why;
};

describe('a set in a link', () => {
  test('there and back, with the files it refers to and no others', async () => {
    const fragment = (await shareFragment(demo))!;
    expect(isShared(fragment)).toBe(true);
    expect(isShared(`#${fragment}`)).toBe(true);
    const { 'other.json': _, ...used } = files;
    expect(await readShared(`#${fragment}`)).toEqual({ ok: true, work: { document: demo.document, files: used } });
    // packed as the standard says: another library reads it
    const plain = inflateRawSync(Buffer.from(fragment.slice(fragment.indexOf('=') + 1), 'base64url')).toString();
    expect(JSON.parse(plain).document).toEqual(demo.document);
    expect(fragment).toMatch(/^[A-Za-z0-9=_-]+$/);
  });

  test('every example fits; one too long to be handed on is none', async () => {
    for (const name of ['beam-and-armature.json', 'beam-from-its-elements.json', 'medium-wave.json', 'rod-and-drop-wire.json'])
      expect((await shareFragment({ document: json(name), files }))!.length).toBeLessThan(LONGEST_LINK / 2);
    const notes = randomBytes(20_000).toString('base64');
    expect(await shareFragment({ document: { ...(demo.document as object), notes }, files })).toBeNull();
  });

  test('a set with a fault comes back with its problems', async () => {
    const read = await readShared(forged({ document: { ...(demo.document as object), tank: { coil: 3 } }, files }));
    if (read.ok) throw new Error('it was taken');
    expect(read.problems.length).toBeGreaterThan(0);
    expect(read.problems[0]!.path).toMatch(/^tank/);
  });
});

describe('links from strangers', () => {
  test('one that unpacks to far more than it is', async () => {
    const bomb = forged(' '.repeat(10_000_000));
    expect(bomb.length).toBeLessThan(LONGEST_LINK);
    expect(await refusal(bomb)).toContain('larger than any set file');
  });

  test('cut short, changed, not ours, too long', async () => {
    const fragment = (await shareFragment(demo))!;
    expect(await refusal(fragment.slice(0, -40))).toMatch(/cut short/);
    expect(await refusal(`${fragment.slice(0, 60)}A${fragment.slice(61)}BBBB`)).toMatch(/cut short|JSON|faults/);
    expect(await refusal('#set1=')).toMatch(/cut short/);
    expect(await refusal('#set1=<script>')).toMatch(/cut short/);
    expect(await refusal('#section')).toMatch(/cut short/);
    expect(await refusal(`#set1=${'A'.repeat(LONGEST_LINK + 1)}`)).toMatch(/longer/);
    expect(await refusal(forged(Buffer.from([0xff, 0xfe]).toString('latin1')))).toMatch(/JSON|cut short/);
  });

  test('keys that reach into the program, nesting without end, other shapes', async () => {
    expect(await refusal(forged('{"document":{"__proto__":{"polluted":1}},"files":{}}'))).toContain('__proto__');
    expect(await refusal(forged('{"document":{},"files":{"constructor":"x"}}'))).toContain('constructor');
    expect(({} as { polluted?: number }).polluted).toBeUndefined();
    const deep = `${'['.repeat(5000)}${']'.repeat(5000)}`;
    expect(await refusal(forged(`{"document":${deep},"files":{}}`))).toMatch(/nested/);
    for (const payload of ['7', 'null', '[]', '{"document":{}}', '{"document":null,"files":{}}', '{"document":{},"files":{"a":1}}', '{'])
      expect(await refusal(forged(payload))).toMatch(/something else|JSON/);
  });
});
