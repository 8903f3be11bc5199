import fc from 'fast-check';
import { expect, test } from 'vitest';
import { drawAnyAerial } from '#draw';
import type { AerialDescription } from '#engine';
import { arbitraryAerial } from '../set-file/arbitrary.ts';
import { labelled, outside, overlaps, readDrawing } from './drawn.ts';
import { everyElement } from './xml.ts';

const rod = { length: 0.71, diameter: 4e-3, metal: 'copper' } as const;
const wire = { diameter: 1e-3 } as const;

/** Aerials that a formula computes, and the straight lengths a maker must find on paper [m]: those of the description, halved where it is fed in the middle. */
const AERIALS: Readonly<Record<string, readonly [AerialDescription, readonly number[]]>> = {
  dipole: [{ kind: 'dipole', ...rod, orientation: { kind: 'horizontal', broadside: 1 } }, [0.355, 0.355]],
  'upright dipole': [{ kind: 'dipole', ...rod, orientation: { kind: 'vertical' } }, [0.355, 0.355]],
  'rod on a plane': [{ kind: 'whip', ...rod, counterpoise: { kind: 'plane' } }, [0.71]],
  'rod on the set': [{ kind: 'whip', ...rod, counterpoise: { kind: 'set', size: 0.12 } }, [0.71, 0.12]],
  'rod and drop wire': [{ kind: 'whip', ...rod, counterpoise: { kind: 'drop-wire', length: 0.6, ...wire } }, [0.71, 0.6]],
  'rod and earth wire': [
    { kind: 'whip', ...rod, counterpoise: { kind: 'earth-wire', length: 1.3, earthResistance: 40, ...wire } },
    [0.71, 1.3],
  ],
  'wire to earth': [{ kind: 'wire-to-earth', horizontal: 20, vertical: 8, diameter: 2e-3, earthResistance: 40 }, [8, 20]],
};

test.each(Object.entries(AERIALS))('%s: every length is drawn to scale', (_, [aerial, lengths]) => {
  const d = readDrawing(drawAnyAerial(aerial)!);
  const [view] = labelled(d.elements, 'view');
  const scale = Number(view!.attributes['data-scale']);
  const drawn = labelled(everyElement(view!), 'wire').map(({ attributes: a }) =>
    Math.hypot(Number(a.x2) - Number(a.x1), Number(a.y2) - Number(a.y1)),
  );
  // a dipole is one wire, cut at its middle
  const whole = aerial.kind === 'dipole' ? [aerial.length] : lengths;
  expect(drawn.map((l) => Number((l / scale / 1e3).toFixed(3)))).toEqual(whole);
  expect(overlaps(d.texts)).toEqual([]);
  expect(outside(d)).toEqual([]);
  const said = d.texts.map((t) => t.text).join(' ');
  for (const l of lengths) expect(said).toContain(l >= 10 ? `${l} m` : `${Math.round(1e3 * l)} mm`);
});

test('an aerial without a shape has no drawing; any other has one that can be read', () => {
  fc.assert(
    fc.property(arbitraryAerial, (aerial) => {
      const svg = drawAnyAerial(aerial);
      if (aerial.kind === 'electrical' || aerial.kind === 'coil') expect(svg).toBeNull();
      else if (aerial.kind !== 'wire-to-earth') expect(svg).not.toBeNull();
      if (svg === null) return;
      const d = readDrawing(svg);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
      expect(overlaps(d.texts)).toEqual([]);
      expect(outside(d)).toEqual([]);
    }),
    { numRuns: 60 },
  );
});
