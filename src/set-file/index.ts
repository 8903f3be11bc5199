/** Set files: read with every complaint at its line, written exactly, published as a JSON Schema. */
import * as z from 'zod/mini';
import en from 'zod/v4/locales/en.js';

// no code is made at run time: pages that forbid it must be able to read set files too
z.config({ ...en(), jitless: true });

export { GROUNDS } from './assemble/place.ts';
export type { WireOnShelf } from './assemble/tank.ts';
export { type MeasuredLaw, readIvCsv } from './csv/iv-csv.ts';
export { type PutStations, putStations, type StationChange } from './csv/put-stations.ts';
export { readStationsCsv, type StationTable } from './csv/read-stations-csv.ts';
export { readTerrainCsv } from './csv/terrain-csv.ts';
export { writeStationsCsv } from './csv/write-stations-csv.ts';
export { fieldDimension } from './field-dimension.ts';
export { type Field, type FieldCommon, type FieldKind, fieldAt } from './fields.ts';
export type { Mark } from './json/positions.ts';
export { LONGEST_FILE } from './json/scan.ts';
export { unpacked } from './packed.ts';
export { type Problem, showPath } from './problem.ts';
export { setFileJsonSchema } from './published-schema.ts';
export { readDrawerFile, readPlaceFile, readSetFile } from './read-set-file.ts';
export { SLOTS as PART_SLOTS, WIRE_VALUES } from './resolve/parts.ts';
export { rewriteSetFile } from './rewrite.ts';
export type { Band, Drawer, DrawerFile, Outcome, ReadOptions, SetFile, Source, UsedPart } from './set-file.ts';
export { type Shareable, shareCode, sheetCode } from './share-code.ts';
export { bandsOf, type Shelf, shelfOf } from './shelf.ts';
export { type StandingNumber, type Variable, variable, variables } from './variable.ts';
export { writeSetFile } from './write-set-file.ts';
export { writtenDrawer } from './written-drawer.ts';
export { writtenPlace } from './written-place.ts';
