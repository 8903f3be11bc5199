import type { Reason } from '#find';
import { writeForPeople } from '#units';

const MHz = (f: number): string => writeForPeople(f, 'frequency', 4);
const share = (x: number): string => `${Number((100 * x).toPrecision(2))} %`;
const speed = (hertzPerDegree: number): string => `${writeForPeople(hertzPerDegree, 'frequency', 3)} a degree`;

const PARTS = {
  capacitors: 'no tuning capacitor',
  wires: 'no wire for a coil',
  formers: 'nothing to wind a coil on',
  detectors: 'no detector',
  earpieces: 'no earpiece',
} as const;

const RULES = {
  bend: 'the wire is too thick to be bent so sharply',
  'self-holding': 'the wire is too thin for a coil that comes off its former and holds itself',
  'former-length': 'the winding is longer than what it is wound on',
  'wire-length': 'there is not so much wire',
} as const;

/** One reason why a drawer gave no set: what limit, how near the nearest set came, and what would mend it. */
export function reasonWords(reason: Reason): string {
  switch (reason.kind) {
    case 'no-station':
      return 'No station is on the air at this place: add one, or take another place.';
    case 'no-part':
      return `There is ${PARTS[reason.part]} in the drawer: add one.`;
    case 'no-direct-path':
      return `Nothing in the drawer lets the direct current of the detector past ${list(reason.earpieces)}: add a resistor of some 470 kohm, or a choke.`;
    case 'not-wound':
      return `No coil that could tune can be wound of the drawer: ${reason.rules.map((r) => RULES[r]).join('; or ')}.`;
    case 'not-reached':
      return `No capacitor of the drawer reaches ${reason.station} (${MHz(reason.frequency)}) with any coil ${reason.missing === null ? 'of up to 200 turns' : `that was tried: ${lacking(reason.missing)}`}.`;
    case 'at-the-end':
      return `${reason.station} (${MHz(reason.frequency)}) stands too near the end of the dial: ${share(reason.margin)} of the rotation must be left beside it, and the best had ${share(reason.best)}.`;
    case 'too-sharp':
      return `The dial is too sharp at ${reason.station} (${MHz(reason.frequency)}): the sharpest allowed is ${speed(reason.limit)}, and the best was ${speed(reason.best)}. A capacitor of smaller range would slow it down.`;
    case 'band-not-covered':
      return `No set covers the band to its end at ${MHz(reason.frequency)}: ${reason.missing === null ? 'the dial gets there, but has no margin left' : lacking(reason.missing)}.`;
    case 'not-together':
      return 'Each limit was kept by some set, all of them at once by none: wish for fewer stations, or add a capacitor of another range.';
    case 'not-tried':
      return 'Too little was tried to say why: search for longer.';
  }
}

function lacking(missing: number): string {
  const much = writeForPeople(Math.abs(missing), 'capacitance', 2);
  return missing > 0 ? `the nearest lacks ${much} at full capacitance` : `the nearest has ${much} too much at least capacitance`;
}

const list = (names: readonly string[]): string =>
  names.length < 2 ? names.join('') : `${names.slice(0, -1).join(', ')} and ${names[names.length - 1]}`;
