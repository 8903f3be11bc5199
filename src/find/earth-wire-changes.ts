import { type AerialDescription, type Signal, SPEED_OF_LIGHT } from '#engine';
import type { Change, Situation } from './situation.ts';
import { type Coupling, couplingWords, neighbours, quarter } from './tank-changes.ts';

/** Above this a wire to earth is no aerial for broadcasting [Hz]. */
const MEDIUM_WAVE_ENDS = 30e6;
/** A wire that a garden holds, and the earth of one rod. */
const GARDEN = { kind: 'wire-to-earth', horizontal: 20, vertical: 6, diameter: 1.5e-3, earthResistance: 50 } as const;
/** A few rods and buried wires together reach hardly less [ohm]. */
const GOOD_EARTH = 10;
const LONGER = 10;
const TALLER = 3;

/** What can be done on medium wave, where the aerial is a wire against earth: more wire, more height, a better earth; or such a wire where there is none. */
export function earthWireChanges(s: Situation, signal: Signal): Change[] {
  const { frequency } = signal.received.station;
  if (frequency >= MEDIUM_WAVE_ENDS) return [];
  const { aerial, tank } = s.set;
  const put = (key: string, words: string, next: AerialDescription, coupling?: Coupling): Change => ({
    key,
    words,
    situation: { ...s, set: { ...s.set, aerial: next, tank: coupling ? { ...tank, aerialCoupling: coupling } : tank } },
  });
  const { aerialCoupling } = tank;
  /** more wire, on the joint there is or a looser one, whichever turns out better */
  const more = (key: string, words: string, next: AerialDescription): Change[] => [
    put(key, words, next),
    ...(aerialCoupling ? neighbours(aerialCoupling, tank.coil.turns) : []).flatMap(([tighter, c]) =>
      tighter ? [] : [put(key, `${words} and ${couplingWords('aerial', c)}`, next, c)],
    ),
  ];
  if (aerial.kind === 'wire-to-earth') {
    const whole = aerial.horizontal + aerial.vertical;
    const room = SPEED_OF_LIGHT / frequency / 4 - whole;
    return [
      ...(aerial.earthResistance > GOOD_EARTH
        ? [
            put('aerial.earth', `better the earth with more rods or buried wire, to ${(aerial.earthResistance / 2).toFixed(0)} ohm`, {
              ...aerial,
              earthResistance: aerial.earthResistance / 2,
            }),
          ]
        : []),
      ...(room > LONGER
        ? more('aerial.longer', `make the level wire ${LONGER} m longer`, { ...aerial, horizontal: aerial.horizontal + LONGER })
        : []),
      ...(room > TALLER ? more('aerial.taller', `raise the wire by ${TALLER} m`, { ...aerial, vertical: aerial.vertical + TALLER }) : []),
    ];
  }
  const words = `put up a wire of ${GARDEN.horizontal} m, ${GARDEN.vertical} m high, and an earth rod`;
  // where it taps the coil best is found by trying
  return [0.1, 0.2, 0.35, 0.6].map((share) => {
    const turns = quarter(share * tank.coil.turns, tank.coil.turns);
    return put('aerial.wire', `${words}, on a tap at ${turns} turns`, GARDEN, { kind: 'tap', turns });
  });
}
