import { describe, expect, test } from 'vitest';
import { readIvCsv, readSetFile, readTerrainCsv } from '#set-file';
import { base } from './base.ts';

const profile = { distance: [0, 1000, 2600], height: [12, 40.5, 8] };

describe('a terrain profile in any of the ways people and programs write tables', () => {
  const writings: Readonly<Record<string, string>> = {
    'metres, commas, no head': '0,12\n1000,40.5\n2600,8\n',
    'a head with units in brackets': 'distance (km), height (m)\n0,12\n1,40.5\n2.6,8',
    'square brackets, other order': 'height [m];distance [km]\n12;0\n40,5;1\n8;2,6',
    'decimal commas': 'Entfernung/km;Höhe/m\n0;12\n1,0;40,5\n2,6;8\n',
    tabs: 'distance_km\theight_m\n0\t12\n1\t40.5\n2.6\t8',
    blanks: '0 12\n1000 40.5\n2600 8',
    'units in the cells': '0 km,12 m\n1 km,40.5 m\n2.6 km,8 m',
    'a line of units': 'distance,height\nkm,m\n0,12\n1,40.5\n2.6,8',
    'more columns than are wanted': 'lat,lon,distance (m),elevation (m),note\n52,1,0,12,mast\n52,1,1000,40.5,hill\n52,1,2600,8,site',
    'notes, blank lines, a byte order mark, quotes': '\ufeff# from the map\n\n"distance","height"\n"0","12"\n\n"1000","40.5"\n"2600","8"\n',
    'line ends of two kinds': '0,12\r\n1000,40.5\r\n2600,8\r\n',
  };
  for (const [what, text] of Object.entries(writings))
    test(what, () => expect(readTerrainCsv(text)).toMatchObject({ ok: true, value: profile }));
});

describe('a terrain profile that cannot be used', () => {
  const rows: readonly (readonly [what: string, text: string, line: number, column: number, why: RegExp, mend: RegExp])[] = [
    ['nothing', '', 1, 1, /no rows/, /distance and height/],
    ['heads only', 'distance,height\n', 1, 1, /no row of numbers/, /then the rows/],
    ['one point', '0,12\n', 1, 1, /two points/, /site/],
    ['not ascending', '0,12\n2000,3\n1000,40\n2600,8', 3, 1, /beyond the point before it, 2000 m/, /Sort/],
    ['twice the same distance', '0,12\n2000,3\n2000,4', 3, 1, /beyond the point before it/, /once/],
    ['not from the mast', '100,12\n1000,4', 1, 1, /foot of the mast/, /be 0/],
    ['a mountain on the moon', '0,12\n1000,12000', 2, 6, /no such ground/, /above sea level/],
    ['a word', '0,12\n1000,high\n2600,8', 2, 6, /begin with a number/, /10 mm/],
    ['a hole', '0,12\n1000,\n2600,8', 2, 1, /no height/, /Complete/],
    ['a wrong unit in a cell', '0 km,12 m\n1 km,40 pF', 2, 6, /unit of a capacitance/, /10 mm/],
    ['a wrong unit in the head', 'distance (pF),height (m)\n0,12\n1,3', 1, 1, /no unit of a length/, /distance \(m\)/],
    ['decimal commas between commas', '0,0,12,5\n1,0,40,5', 1, 1, /2 are wanted/, /semicolons/],
    ['one column', '0\n1000', 1, 1, /2 are wanted: distance and height/, /columns/],
    ['a row that grows', '0,12\n1,000,40\n2600,8', 2, 1, /more columns/, /semicolons/],
    ['a long preface', 'a\nb\nc\n0,12\n1000,4', 1, 1, /no row of numbers/, /one or two lines/],
    ['a table without end', 'x'.repeat(6e6), 1, 1, /no table is that long/, /fewer/],
  ];
  for (const [what, text, line, column, why, mend] of rows)
    test(what, () => {
      const read = readTerrainCsv(text, 'hill.csv');
      if (read.ok) throw new Error('it was read');
      expect(read.problems[0]).toMatchObject({ file: 'hill.csv', line, column });
      expect(read.problems[0]!.why).toMatch(why);
      expect(read.problems[0]!.mend).toMatch(mend);
    });

  test('a table of nonsense is not complained of row by row for ever', () => {
    const read = readTerrainCsv(`0,1\n${'x,y\n'.repeat(500)}`);
    expect(read.ok ? 0 : read.problems.length).toBeLessThanOrEqual(21);
  });
});

const law = 'U (mV);I (uA)\n-200;-1,5\n-100;-1,2\n0;0\n100;8\n200;90\n';

describe('a measured law', () => {
  test('in the units of its head', () => {
    const read = readIvCsv(law);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value.voltage).toEqual([-0.2, -0.1, 0, 0.1, 0.2]);
    expect(read.value.current).toEqual([-1.5e-6, -1.2e-6, 0, 8e-6, 90e-6]);
  });

  const wrong: readonly (readonly [what: string, text: string, line: number, why: RegExp, mend: RegExp])[] = [
    ['too few rows', 'V,I\n-0.1,-1\n0,0\n0.1,1', 2, /5 rows/, /10 mV/],
    ['falling voltage', law.replace('-100;', '-300;'), 3, /row 2 does not lie above/, /Sort/],
    ['falling current', law.replace('200;90', '200;7'), 6, /row 5 falls/, /smooth/],
    ['offset of the meter', law.replace('0;0\n', '0;0,1\n'), 4, /deliver power/, /offset/],
    ['one side only', 'V,I\n0,0\n0.1,1\n0.2,2\n0.3,3\n0.4,4', 2, /both sides/, /other direction/],
    ['flat about zero', 'V,I\n-0.2,-1\n-0.1,0\n0,0\n0.1,0\n0.2,2', 5, /flat about 0 V \(rows 2 to 4\)/, /finer ammeter/],
  ];
  for (const [what, text, line, why, mend] of wrong)
    test(what, () => {
      const read = readIvCsv(text);
      if (read.ok) throw new Error('it was read');
      expect(read.problems[0]).toMatchObject({ line });
      expect(read.problems[0]!.why).toMatch(why);
      expect(read.problems[0]!.mend).toMatch(mend);
    });
});

describe('tables named in a set file', () => {
  const draft = base();
  draft.place.stations[0].terrain = { csv: 'hill.csv' };
  draft.detector = { kind: 'table', csv: 'diode.csv', capacitance: '1 pF' };
  const text = JSON.stringify(draft, null, 2);
  const files = (hill: string, diode: string) => ({ read: (path: string) => ({ 'hill.csv': hill, 'diode.csv': diode })[path]! });
  const hill = '0,12\n1000,40.5\n2600,8\n';

  test('are put in', () => {
    const read = readSetFile(text, files(hill, law));
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    expect(read.value.place?.stations[0]?.terrain).toEqual(profile);
    expect(read.value.detector).toMatchObject({ kind: 'table', voltage: [-0.2, -0.1, 0, 0.1, 0.2], capacitance: 1e-12 });
    expect(read.source.files).toEqual(['hill.csv', 'diode.csv']);
    expect(read.source.locate('detector.voltage[3]')).toEqual({ file: 'diode.csv', line: 5, column: 1 });
  });

  test('and their mistakes stand in their own lines', () => {
    const read = readSetFile(text, files('0,12\n1000,high', law.replace('200;90', '200;7')));
    expect(read).toMatchObject({
      ok: false,
      problems: [
        { path: 'detector.csv', file: 'diode.csv', line: 6 },
        { path: 'place.stations[0].terrain.csv', file: 'hill.csv', line: 2, column: 6 },
      ],
    });
  });

  test('a profile that ends elsewhere is found once it is put in', () => {
    const read = readSetFile(text, files('0,12\n9000,8', law));
    expect(read).toMatchObject({ ok: false, problems: [{ path: 'place.stations[0].terrain', why: 'the mast is 2.6 km away' }] });
  });

  test('a table that is gone is one problem', () => {
    const read = readSetFile(text, {
      read: (path) => {
        if (path === 'hill.csv') return hill;
        throw new Error('gone');
      },
    });
    expect(read).toMatchObject({ ok: false, problems: [{ path: 'detector.csv', why: 'the file cannot be read: gone' }] });
    if (!read.ok) expect(read.problems).toHaveLength(1);
  });
});
