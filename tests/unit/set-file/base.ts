/** A short, whole set file at an invented place; tests change one thing in it. */
// biome-ignore lint/suspicious/noExplicitAny: tests put wrong things in on purpose
export type Draft = any;

export function base(): Draft {
  return {
    version: 1,
    name: 'a set',
    place: {
      site: { height: '6 m', ground: 'wet' },
      stations: [
        { name: 'Fen Talk', frequency: '99.2 MHz', power: '8 kW', mastHeight: '110 m', distance: '2.6 km', bearing: 'ESE' },
        { name: 'Long Bank', frequency: '909 kHz', power: '20 dBk', distance: '40 km', bearing: '200°' },
      ],
    },
    aerial: { kind: 'dipole', length: '1.42 m', orientation: { kind: 'horizontal', broadside: 'ESE' } },
    tank: {
      coil: { kind: 'geometry', turns: '5 1/2', innerDiameter: '12 mm', wireDiameter: '1 mm', pitch: '2 mm' },
      capacitor: { minimum: '4 pF', maximum: '20 pF' },
      aerialCoupling: { kind: 'tap', turns: 1 },
      detectorCoupling: { kind: 'tap', turns: '2 3/4' },
    },
    detector: { kind: 'junction', saturationCurrent: '3 uA', junctionCapacitance: '0.2 pF' },
    phones: {
      load: '470 k',
      earpiece: {
        kind: 'piezo',
        coupling: 'plug',
        sensitivity: '98 dB SPL',
        sensitivityAt: '1 V',
        coupler: 'IEC 60318-4',
        capacitance: '15 nF',
      },
    },
  };
}

export const baseText = (): string => JSON.stringify(base(), null, 2);

/** Line and column, from 1, of a piece of text or of an offset in it. */
export function placeOf(text: string, where: string | { readonly offset: number }): { readonly line: number; readonly column: number } {
  const at = typeof where === 'string' ? text.indexOf(where) : where.offset;
  if (at < 0) throw new Error(`the text does not hold ${JSON.stringify(where)}`);
  const before = text.slice(0, at).split('\n');
  return { line: before.length, column: before.at(-1)!.length + 1 };
}
