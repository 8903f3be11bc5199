import { describedCuts } from '#draw';
import {
  type DetectorDescription,
  type Metal,
  type PhonesDescription,
  roundWireDirectResistance,
  type SetDescription,
  saturationCurrentAt,
  thermalVoltage,
} from '#engine';
import { formatFigure } from '#units';
import { farads, ohms } from './say.ts';

/** Current of the diode test of pocket meters [A]: common practice, no source. */
const TEST_CURRENT = 1e-3;
/** A meter's own leads and contacts have up to so much [ohm]: common practice, no source. */
const METER_LEADS = 0.5;

/** What a meter shows from end to end of a wire of so much resistance to direct current [ohm], its own leads included. */
export const throughWire = (resistance: number): string =>
  resistance < METER_LEADS ? 'less than 1 Ω' : `about ${formatFigure(resistance, 'ohm', 2)}, and what the meter's own leads have`;

/** What simple means show of an earpiece. */
export function earpieceTest({ earpiece: e }: PhonesDescription): string {
  if (e.kind === 'piezo')
    return `A meter set to the highest resistance shows no steady reading (the leak is reckoned with ${ohms(e.leakResistance)}), one for capacitance about ${farads(e.capacitance)}. Touched for a moment to a 1.5 V cell it clicks. It keeps the charge: join its two wires for a moment before the next try.`;
  return `A meter shows about ${ohms(e.resistance)}. Touched for a moment to a 1.5 V cell${e.resistance < 100 ? ' through 1 kΩ' : ''} it clicks, on and off.`;
}

/** What a pocket meter shows of a detector. */
export function detectorTest(d: DetectorDescription): string {
  if (d.kind === 'junction') {
    const vt = thermalVoltage(d.temperature);
    const forward = d.ideality * vt * Math.log1p(TEST_CURRENT / saturationCurrentAt(d, d.temperature)) + TEST_CURRENT * d.seriesResistance;
    return `The diode test, which sends about 1 mA, shows near ${formatFigure(forward, 'V', 2)} one way round and far more, or nothing, the other way. The end with the ring or dot is the cathode.`;
  }
  if (d.kind === 'channel')
    return 'Keep its legs in foil until it is soldered, and touch the foil first: a spark you do not feel kills it. Between drain and source a meter shows the same both ways round.';
  return `In the meter it must follow the law that was measured: ${formatFigure(d.current.at(-1)!, 'A', 2)} at ${formatFigure(d.voltage.at(-1)!, 'V', 2)}.`;
}

/** Resistance across the output that a meter sees with the detector blocking, phones and transformer not yet joined; null where nothing closes the way. */
export function outputResistance(p: PhonesDescription): number | null {
  const ways = [p.load, p.choke?.resistance].filter((r) => r !== undefined);
  return ways.length === 0 ? null : 1 / ways.reduce((sum, r) => sum + 1 / r, 0);
}

/** A detector that blocks one way has at least so many times what lies across the output, or so much, at rest. */
const BLOCKS = 10;
const SHUT = 10e6;

/**
 * What a meter shows across the output, the detector joined through the coil, phones off.
 *
 * @param across - of what lies across the output; null for nothing [ohm]
 * @param rest - of the detector with next to no voltage [ohm]: on its high ranges a meter sends less than the saturation current of a sensitive one, which then conducts
 * both ways alike
 */
export function outputTest(across: number | null, rest: number): string {
  const blocks = rest > (across === null ? SHUT : BLOCKS * across);
  if (blocks)
    return across === null
      ? 'Across the output no reading one way round, some the other way.'
      : `Across the output, phones off, ${ohms(across)} one way round and not more the other way.`;
  const leak = `a detector as sensitive as this has about ${formatFigure(rest, 'ohm', 2)} both ways to the small current of a high range`;
  if (across === null) return `Across the output more one way round than the other: ${leak}.`;
  return `Across the output, phones off, at most ${ohms(across)} one way round, perhaps only ${formatFigure(1 / (1 / across + 1 / rest), 'ohm', 2)}, and less the other way: ${leak}.`;
}

/** What a meter shows between the terminals of an aerial that is up, not joined to the set; null where nothing can be said. */
export function aerialTest({ aerial: a }: SetDescription): string | null {
  const open = 'Between its two terminals a meter shows no reading: nothing touches.';
  const closed = (resistance: number): string =>
    `Between its two terminals a meter shows ${throughWire(resistance)}: it is one piece of metal.`;
  switch (a.kind) {
    case 'dipole':
    case 'whip':
      return open;
    case 'loop':
      return closed(roundWireDirectResistance(a.wireDiameter, a.turns * Math.PI * a.diameter, a.metal));
    case 'wire-to-earth':
      return 'From the wire to the earth rod a meter shows no reading as long as the wire hangs free.';
    case 'coil':
    case 'electrical':
      return null;
    case 'wires':
      switch (a.shape.kind) {
        case 'rod':
        case 'dipole':
          return open;
        case 'folded-dipole':
        case 'round-loop':
        case 'square-loop':
          return closed(inARow(a));
        case 'beam':
          // of rods, and thick
          return a.shape.driven.element.kind === 'folded' ? closed(0) : open;
        case 'free-list':
          return null;
      }
  }
}

/** All conductors of an aerial, end to end [ohm]. */
const inARow = (a: Parameters<typeof describedCuts>[0]): number =>
  describedCuts(a).reduce(
    (sum, { count, length, diameter, metal }) =>
      sum + (metal === 'lossless' ? 0 : count * roundWireDirectResistance(diameter, length, metal as Metal)),
    0,
  );
