import type { PartCategory } from '#parts';
import { isObject } from './own-drawer.ts';

/** Units by their signs, which the library writes as a keyboard has them. */
const withSigns = (written: string): string =>
  written
    .replace(/ u(?=[A-Z])/, ' µ')
    .replace(/ohm$/, 'Ω')
    .replace(/ deg$/, '°');

/** What a part is, in a few words made of its values as they are written; empty where too little is given to say. */
export function partWords(category: PartCategory, values: unknown): string {
  if (!isObject(values)) return '';
  const text = (key: string): string =>
    typeof values[key] === 'string' || typeof values[key] === 'number' ? withSigns(String(values[key])) : '';
  const said = (...pieces: readonly (readonly [string, string])[]): string =>
    pieces.flatMap(([words, value]) => (value === '' ? [] : [`${words}${value}`])).join(', ');
  switch (category) {
    case 'capacitors':
      return text('minimum') && text('maximum') ? said(['', `${text('minimum')} to ${text('maximum')}`], ['turns ', text('rotation')]) : '';
    case 'detectors':
      return detectorWords(text('kind'), said, text);
    case 'earpieces':
      return said(
        ['', text('kind') === 'piezo' ? 'piezo' : text('kind')],
        ['', text('kind') === 'piezo' ? text('capacitance') : text('resistance')],
        ['', COUPLINGS[text('coupling')] ?? text('coupling')],
      );
    case 'transformers':
      return said(
        ['ratio ', text('ratio') && `${Number(Number(text('ratio')).toPrecision(3)) || text('ratio')} : 1`],
        ['primary ', text('primaryInductance')],
      );
    case 'wires':
      return said(['', text('wireDiameter')], ['', text('metal')]);
  }
}

function detectorWords(
  kind: string,
  said: (...pieces: readonly (readonly [string, string])[]) => string,
  text: (key: string) => string,
): string {
  if (kind === 'junction') return said(['diode, saturation current ', text('saturationCurrent')], ['', text('junctionCapacitance')]);
  if (kind === 'channel') return said(['transistor, threshold ', text('threshold')], ['gate ', text('gateCapacitance')]);
  return kind === 'table' ? 'diode by its measured curve' : '';
}

const COUPLINGS: Readonly<Record<string, string>> = {
  plug: 'a plug in the ear',
  insert: 'sealed in the ear',
  'supra-aural': 'on the ear',
  circumaural: 'around the ear',
  open: 'held to the ear',
};
