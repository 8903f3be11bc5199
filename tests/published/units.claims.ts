import { LIBRARY } from '#parts';
import { shelfOf } from '#set-file';
import { awgDiameter, readQuantity, swgDiameter } from '#units';
import type { Claim, Comparison, LeftOut } from './claim.ts';

/** The gauge by its function and as a person writes it must agree with the table and so with each other. */
function gauge(
  name: 'AWG' | 'SWG',
  n: number,
  diameter: number | null,
  expected: number,
  tolerance: Comparison['tolerance'],
): Comparison[] {
  const written = n < 0 ? `${1 - n}/0 ${name}` : `${n} ${name}`;
  const read = readQuantity(written, 'diameter');
  return [
    { what: `${name} ${n}`, got: diameter ?? Number.NaN, expected, tolerance },
    { what: `"${written}" read`, got: read.ok ? read.value : Number.NaN, expected, tolerance },
  ];
}

/** Sizes that the library of wires has. */
const STOCKED = /^iec60317-d(0\.200|0\.315|0\.400|0\.500|0\.800|1\.000|1\.500)$/;

export const claims: readonly Claim[] = [
  {
    figure: 'wire diameter from American gauge',
    against: 'ASTM B258',
    errorUnit: '%',
    file: 'coils',
    ids: /^awg-(\d+|\d\/0)$/,
    check: (e) => gauge('AWG', e.inputs.awg.value, awgDiameter(e.inputs.awg.value), e.expected.value, { rel: e.tolerance.rel }),
  },
  {
    figure: 'wire diameter from standard wire gauge',
    against: 'BS 3737',
    errorUnit: '%',
    file: 'coils',
    ids: /^swg-\d+$/,
    check: (e) => gauge('SWG', e.inputs.swg.value, swgDiameter(e.inputs.swg.value), e.expected.value, { abs: e.tolerance.abs }),
  },
  {
    figure: 'enamelled wire of the library, nominal diameter',
    against: 'IEC 60317-0-1',
    errorUnit: '%',
    file: 'coils',
    ids: STOCKED,
    check: (e) => {
      const name = `enamelled-copper-${Number(e.id.replace('iec60317-d', ''))}mm`;
      const wire = shelfOf(LIBRARY).wires[name];
      return [{ what: name, got: wire?.wireDiameter ?? Number.NaN, expected: e.expected.value, tolerance: { abs: e.tolerance.abs } }];
    },
  },
];

export const leftOut: readonly LeftOut[] = [
  {
    file: 'coils',
    ids: new RegExp(`^(?!${STOCKED.source.slice(1)})iec60317-d\\d`),
    reason: 'preferred sizes that the library of wires does not stock: any diameter may be given, and none is chosen from the series',
  },
  {
    file: 'coils',
    ids: /^iec60317-od-/,
    reason: 'thickness of enamel: the engine knows the bare wire and the pitch, and computes nothing from the outer diameter',
  },
  {
    file: 'coils',
    ids: /^iec60063-/,
    reason: 'preferred numbers of resistors and capacitors: any value may be given, and nothing here chooses one',
  },
];
