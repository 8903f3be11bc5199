import { expect, test } from 'vitest';
import { type DimensionName, readQuantity } from '#units';

const rows: readonly (readonly [given: unknown, dimension: DimensionName, why: RegExp, mend: RegExp])[] = [
  ['1,234 km', 'length', /could mean 1\.234 or 1234$/, /Write 1\.234 .* 1234 /],
  ['1,23,4 m', 'length', /points and commas/, /decimal point/],
  ['1.2.3 m', 'length', /points and commas/, /decimal point/],
  ['1, m', 'length', /points and commas/, /decimal point/],
  ['10', 'length', /no unit/, /10 mm.* taken in m/],
  ['20', 'temperature', /no unit/, /20 °C/],
  ['180', 'angle', /no unit/, /180°/],
  ['6', 'gain', /no unit/, /dBi/],
  ['6 dB', 'gain', /over what/, /dBi .* dBd/],
  [45, 'bearing', /degrees or radians/, /"45°" or "45 rad"/],
  [52.5, 'latitude', /degrees or radians/, /"52.5°"/],
  ['12 mH', 'capacitance', /unit of an inductance, and a capacitance/, /12 pF/],
  ['18 AWG', 'length', /unit of a diameter, and a length/, /10 mm/],
  ['98.4 mhz', 'frequency', /no unit of a frequency/, /"MHz"/],
  ['12 PF', 'capacitance', /no unit of a capacitance/, /"pF"/],
  ['10 metrs', 'length', /no unit of a length/, /"metre"/],
  ['12 parsecs', 'length', /no unit of a length/, /^Write it like/],
  ['61 AWG', 'diameter', /whole numbers from 4\/0 to 56/, /18 AWG/],
  ['18.5 AWG', 'diameter', /whole numbers/, /18 AWG/],
  ['99 SWG', 'diameter', /whole numbers from 0 to 50/, /18 AWG/],
  ['5 ft 14 in', 'length', /twelve inches/, /fewer/],
  ['3/0 in', 'length', /zero below the line/, /3\/4/],
  ['5:0', 'ratio', /no value/, /20:1/],
  ["52°61'N", 'latitude', /below 60/, /52°30/],
  ["52.5°30'N", 'latitude', /whole/, /52°30/],
  ['-52 N', 'latitude', /both a sign and the letter N/, /one of the two/],
  ['52 E', 'latitude', /E does not belong to a latitude/, /52/],
  ['1 N', 'longitude', /N does not belong to a longitude/, /1°30'W/],
  ['NNNE', 'bearing', /no point of the compass/, /NNE/],
  ['1 м', 'length', /U\+043C.* looks like "m"/, /keyboard/],
  ['１ m', 'length', /U\+FF11.* looks like "1"/, /keyboard/],
  ['1\u200b m', 'length', /contains U\+200B, /, /keyboard/],
  ['5 m 😀', 'length', /U\+1F600/, /keyboard/],
  ['', 'length', /empty/, /10 mm/],
  ['   ', 'length', /empty/, /10 mm/],
  ['m', 'length', /begin with a number/, /10 mm/],
  ['NaN m', 'length', /begin with a number/, /10 mm/],
  ['Infinity m', 'length', /begin with a number/, /10 mm/],
  ['1e999 m', 'length', /too large/, /10 mm/],
  ['1e-999 m', 'length', /too small/, /10 mm/],
  ['9999 dBW', 'power', /too large/, /10 kW/],
  ['9'.repeat(100), 'length', /too long/, /10 mm/],
  [Number.NaN, 'length', /not a finite number/, /10 mm/],
  [Number.POSITIVE_INFINITY, 'length', /not a finite number/, /10 mm/],
  [null, 'length', /not a length/, /10 mm/],
  [true, 'length', /not a length/, /10 mm/],
  [['1 mm'], 'length', /not a length/, /10 mm/],
  [{ value: 1 }, 'length', /not a length/, /10 mm/],
];

for (const [given, dimension, why, mend] of rows)
  test(`refused: ${String(JSON.stringify(given)).slice(0, 30)} as ${dimension}, ${why}`, () => {
    const reading = readQuantity(given, dimension);
    if (reading.ok) throw new Error(`read as ${reading.value}`);
    expect(reading.why).toMatch(why);
    expect(reading.mend).toMatch(mend);
    expect(reading.given.length).toBeLessThan(70);
  });
