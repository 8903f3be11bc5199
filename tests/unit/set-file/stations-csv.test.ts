import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { putStations, readStationsCsv, type StationTable, writeStationsCsv, writtenPlace } from '#set-file';
import { base } from './base.ts';

type Json = Record<string, unknown>;
const FENMARKET = readFileSync(new URL('../../../examples/fenmarket.json', import.meta.url), 'utf8');
const fenmarket = (): Json => writtenPlace(FENMARKET)!;
const stationsOf = (place: Json): readonly Json[] => place.stations as readonly Json[];

function table(text: string): StationTable {
  const read = readStationsCsv(text, 'list.csv');
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const ROW = {
  name: 'Fen Talk',
  frequency: '99.2 MHz',
  power: '8 kW',
  polarisation: 'horizontal',
  mastHeight: '110 m',
  distance: '2.6 km',
  bearing: '110°',
  stereo: false,
  programme: 'speech',
};

describe('a list of stations in any of the ways people and programs write tables', () => {
  const head = 'name,frequency,power,polarisation,mast height,distance,bearing,stereo,programme';
  const writings: Readonly<Record<string, string>> = {
    'as it is documented': `${head}\nFen Talk,99.2 MHz,8 kW,horizontal,110 m,2.6 km,110°,no,speech\n`,
    'line ends and the byte order mark of spreadsheets': `\ufeff${head}\r\nFen Talk,99.2 MHz,8 kW,horizontal,110 m,2.6 km,110°,no,speech\r\n`,
    'another order':
      'Distance,Name,Frequency,Power,Polarization,MastHeight,Bearing,Stereo,Program\n2.6 km,Fen Talk,99.2 MHz,8 kW,Horizontal,110 m,110°,mono,Speech',
    'units in the head':
      'name,frequency (MHz),power [kW],polarisation,mast_height (m),distance (km),bearing,stereo,programme\nFen Talk,99.2,8,horizontal,110,2.6,110°,false,speech',
    'decimal commas between semicolons':
      'name;frequency (MHz);power (kW);polarisation;mast height (m);distance (km);bearing;stereo;programme\nFen Talk;99,2;8;horizontal;110;2,6;110°;no;speech',
    'tabs, notes and blank lines': `# from a walk\n\n${head.replaceAll(',', '\t')}\n\nFen Talk\t99,2 MHz\t8 kW\thorizontal\t110 m\t2,6 km\t110°\tno\tspeech\n`,
    quotes: `"name",${head.slice(5)}\n"Fen Talk","99.2 MHz",8 kW,"horizontal",110 m, "2.6 km" ,110°,no,speech`,
  };
  for (const [what, text] of Object.entries(writings)) test(what, () => expect(table(text).rows[0]!.values).toEqual(ROW));

  test('a name may hold commas, quotes and line ends', () => {
    const { rows } = table('name,frequency\n"Fen, ""Talk""\nand Song",99.2 MHz\nLantern,101.7 MHz\n');
    expect(rows.map((r) => r.values.name)).toEqual(['Fen, "Talk"\nand Song', 'Lantern']);
    expect(rows.map((r) => r.line)).toEqual([2, 4]);
  });

  test('columns that are no part of a station are named, not taken in silence', () =>
    expect(table('name,county,frequency\nFen Talk,Holland,99.2 MHz').ignored).toEqual(['county']));
});

describe('a list that cannot be used, and where', () => {
  const rows: readonly (readonly [what: string, text: string, line: number, column: number, why: RegExp, mend: RegExp])[] = [
    ['nothing', '', 1, 1, /no rows/, /mast height/],
    ['a head alone', 'name,frequency\n', 1, 1, /no row follows/, /at least one/],
    ['no head', 'Fen Talk,99.2 MHz\nLantern,101.7 MHz', 1, 1, /no column is headed "name"/, /first row is the head/],
    ['a misspelt head', 'name,frequncy\nFen Talk,99.2 MHz', 1, 6, /no such column/, /"frequency"/],
    ['a column twice', 'name,power,power\nFen Talk,8 kW,9 kW', 1, 12, /already/, /Delete/],
    ['a wrong unit in the head', 'name,power (MHz)\nFen Talk,8', 1, 6, /no unit of a power/, /power \(W\)/],
    ['a word for a number', 'name,frequency\nFen Talk,99.2 MHz\nLantern,high', 3, 9, /begin with a number/, /98\.4 MHz/],
    ['no unit anywhere', 'name,frequency\nFen Talk,99.2', 2, 10, /unit/, /98\.4 MHz/],
    ['a wrong unit in a cell', 'name,frequency\nFen Talk,99.2 kW', 2, 10, /power/, /98\.4 MHz/],
    ['stereo neither yes nor no', 'name,stereo\nFen Talk,perhaps', 2, 10, /yes or no/, /empty/],
    ['a comma too many', 'name,frequency\nFen, Talk,99.2 MHz', 2, 11, /head has 2 columns/, /quotes/],
    ['a row that grows', 'name,power\nFen Talk,8 kW,yes', 2, 15, /head has 2 columns/, /quotes/],
    ['a quote that is never closed', 'name,power\n"Fen Talk,8 kW\nLantern,1 kW', 2, 1, /never closed/, /Close/],
    ['text behind a quote', 'name,power\n"Fen" Talk,8 kW', 2, 7, /follows the closing quote/, /two quotes/],
    ['a table without end', 'x'.repeat(6e6), 1, 1, /that long/, /fewer/],
    ['too many rows', `name\n${'a\n'.repeat(1001)}`, 1, 1, /1000 are the most/, /fewer/],
  ];
  for (const [what, text, line, column, why, mend] of rows)
    test(what, () => {
      const read = readStationsCsv(text, 'list.csv');
      if (read.ok) throw new Error('it was read');
      expect(read.problems[0]).toMatchObject({ file: 'list.csv', line, column });
      expect(read.problems[0]!.why).toMatch(why);
      expect(read.problems[0]!.mend).toMatch(mend);
    });

  const unfit: readonly (readonly [what: string, text: string, line: number, column: number, why: RegExp])[] = [
    ['out of range', 'name,frequency\nFen Talk,99.2 GHz', 2, 10, /outside what can be/],
    ['a word that is none', 'name,polarisation\nLantern,slanted', 2, 9, /./],
    ['no name', 'name,power\n,8 kW', 2, 1, /./],
    ['twice the same name', 'name,power\nLantern,8 kW\nLantern,1 kW', 3, 1, /station 1 of the list/],
    ['a new station without a frequency', 'name,power,distance,bearing,mast height\nNewcomer,1 kW,3 km,N,40 m', 2, 1, /missing/],
    ['a distance left out', 'name,distance\nLantern,1 km\nFen Talk,', 3, 10, /missing/],
    ['inside the mast', 'name,distance,mast height\nLantern,0.1 m,8 m', 2, 9, /inside the transmitting aerial/],
  ];
  for (const [what, text, line, column, why] of unfit)
    test(`${what}, found by the place it would be put in`, () => {
      const put = putStations(fenmarket(), table(text), 'keep');
      if (put.ok) throw new Error('it was taken');
      expect(put.problems[0]).toMatchObject({ file: 'list.csv', line, column });
      expect(put.problems[0]!.why).toMatch(why);
    });
});

describe('stations put into a place', () => {
  test('what was written out comes back as it was, to the letter', () => {
    const place = fenmarket();
    const put = putStations(place, table(writeStationsCsv(stationsOf(place))), 'take out');
    if (!put.ok) throw new Error(JSON.stringify(put.problems));
    expect(JSON.stringify(put.value.stations)).toBe(JSON.stringify(place.stations));
    expect(put.value.changes.map((c) => c.kind)).toEqual(['as it was', 'as it was', 'as it was', 'as it was']);
  });

  test('so does whatever a name may hold, and plain numbers in SI units', () =>
    fc.assert(
      fc.property(fc.string({ minLength: 1, maxLength: 60, unit: 'binary' }), fc.integer({ min: 88e6, max: 108e6 }), (name, frequency) => {
        // the table's line ends are one, whichever they were
        fc.pre(!name.includes('\r'));
        const place: Json = { ...fenmarket(), stations: [{ ...stationsOf(fenmarket())[0], name, frequency }] };
        const put = putStations(place, table(writeStationsCsv(stationsOf(place))), 'take out');
        expect(put.ok && put.value.stations).toEqual(place.stations);
      }),
    ));

  test('what has no column stays', () => {
    const place: Json = base().place;
    const stations = stationsOf(place).map((s) => ({ ...s, measuredField: '90 dBuV/m', notRead: undefined }));
    const put = putStations({ ...place, stations }, table('name,power\nFen Talk,9 kW'), 'keep');
    if (!put.ok) throw new Error(JSON.stringify(put.problems));
    expect(put.value.stations[0]).toMatchObject({ name: 'Fen Talk', power: '9 kW', measuredField: '90 dBuV/m', frequency: '99.2 MHz' });
    expect(put.value.changes[0]).toEqual({
      name: 'Fen Talk',
      kind: 'changed',
      cells: [{ head: 'power', before: '8 kW', after: '9 kW' }],
    });
  });

  test('stations the table does not name are kept or taken out, as is asked', () => {
    const list = table('name,stereo\nFen Talk,no');
    const names = (others: 'keep' | 'take out') => {
      const put = putStations(fenmarket(), list, others);
      if (!put.ok) throw new Error(JSON.stringify(put.problems));
      return [put.value.stations.map((s) => s.name), put.value.changes.map((c) => c.kind)];
    };
    expect(names('keep')).toEqual([
      ['Fen Talk', 'Radio Gannet', 'Lantern', 'Estuary Two'],
      ['as it was', 'as it was', 'as it was', 'as it was'],
    ]);
    expect(names('take out')).toEqual([['Fen Talk'], ['as it was', 'taken out', 'taken out', 'taken out']]);
  });

  test('distance and bearing take the place of coordinates; empty cells leave them', () => {
    const at = { latitude: '52°', longitude: '0.1°' };
    const place: Json = {
      site: { coordinates: { latitude: '52.1°', longitude: '0.1°' } },
      stations: [{ name: 'Fen Talk', frequency: '99.2 MHz', power: '8 kW', mastHeight: '110 m', coordinates: at }],
    };
    const same = putStations(place, table(writeStationsCsv(stationsOf(place))), 'keep');
    expect(same.ok && same.value.stations).toEqual(place.stations);
    const moved = putStations(place, table('name,distance,bearing\nFen Talk,5 km,S'), 'keep');
    expect(moved.ok && moved.value.stations[0]).not.toHaveProperty('coordinates');
  });
});

describe('the place of a document', () => {
  const files = (path: string): string => {
    if (path === 'towns/town.json')
      return JSON.stringify({ version: 1, place: { stations: [{ ...stationsOf(fenmarket())[0], terrain: { csv: 'hill.csv' } }] } });
    throw new Error('there is no such file');
  };
  test('its own, as it is written', () => expect(writtenPlace(JSON.stringify(base()))).toEqual(base().place));
  test('in another file, whose tables lie beside it', () => {
    const place = writtenPlace(JSON.stringify({ version: 1, place: { file: 'towns/town.json' } }), { read: files });
    expect(stationsOf(place!)[0]).toMatchObject({ name: 'Fen Talk', terrain: { csv: 'towns/hill.csv' } });
  });
  test.each([
    ['none', {}],
    ['a file that is gone', { place: { file: 'other.json' } }],
  ])('%s', (_, more) => expect(writtenPlace(JSON.stringify({ version: 1, ...more }), { read: files })).toBeNull());
});
