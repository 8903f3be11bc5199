import { describe, expect, test } from 'vitest';
import { bandOf, FIRST } from '../../../src/app/model/find/asked.ts';

const band = (from: string, to: string) => bandOf({ ...FIRST, band: { from, to } });

describe('a band as it is typed', () => {
  test('nothing typed is no band; ends are read with their units', () => {
    expect(band('', '  ')).toEqual({ ok: true, band: null });
    expect(band('88 MHz', '108MHz')).toEqual({ ok: true, band: { from: 88e6, to: 108e6 } });
    expect(band('526.5 kHz', '1.6065 MHz')).toEqual({ ok: true, band: { from: 526.5e3, to: 1606.5e3 } });
  });

  test.each([
    ['88 MHz', '', /^To: /],
    ['', '108 MHz', /^From: /],
    ['88 apples', '108 MHz', /^From: /],
    ['108 MHz', '88 MHz', /lower end first/],
    ['88 MHz', '88 MHz', /lower end first/],
  ])('from "%s" to "%s" is told', (from, to, why) => {
    const told = band(from, to);
    expect(told.ok ? '' : told.why).toMatch(why);
  });
});
