import { SPEED_OF_LIGHT } from '../constants.ts';
import { type Figure, term } from '../figure.ts';
import { PLAIN_WIRE, straightWireResistance } from './conductor.ts';
import type { AerialDescription } from './description.ts';
import { mustBeThin, mustNotBeNegative } from './given-checks.ts';
import { feedRatio } from './induced-emf.ts';
import type { AerialModel } from './model.ts';
import { sineCurrent, squareLength } from './sinusoidal-current.ts';
import { uprightModel } from './upright.ts';
import { levelWireCapacitance, uprightWireCapacitance } from './wire-capacitance.ts';

type WireToEarth = Extract<AerialDescription, { kind: 'wire-to-earth' }>;

const method = 'top-loaded vertical as a line';
const source = 'line equations, Terman, Radio Engineers Handbook (1943) sec. 3; capacitances, ibid. sec. 2';

/**
 * Long wire against earth: a rising part, and a level part that loads its top.
 *
 * Both parts are lines of surge impedance Z = length/(c C), C their capacitance to ground. The open level part, -j Z_h cot k l, is as
 * good as a further height d of rising wire, tan k d = (Z_v/Z_h) tan k l. So I(z) = sin k(h + d - z)/sin k(h + d), X = -Z_v cot k(h + d),
 * and the effective height lies between half the rising part (no top) and the whole of it (great top). Over the ground the level part
 * does not radiate, its image undoes it. Losses: earth and copper.
 *
 * Holds for h + d below a quarter wave, that is below the wire's own resonance; capacitances within 10 %. The level part's own hearing (of level
 * fields, and of the tilt of a ground wave over poor ground) is left out.
 */
export function wireToEarthModel(wire: WireToEarth): AerialModel {
  mustBeThin('aerial', wire.vertical, wire.diameter);
  mustNotBeNegative('aerial.horizontal', wire.horizontal, 'm');
  mustNotBeNegative('aerial.earthResistance', wire.earthResistance, 'ohm');
  const { horizontal, vertical, diameter, earthResistance } = wire;
  const radius = diameter / 2;
  const levelC = levelWireCapacitance(horizontal, vertical, radius);
  const uprightC = uprightWireCapacitance(vertical, radius);
  const zv = vertical / (SPEED_OF_LIGHT * uprightC);
  const zh = horizontal > 0 ? horizontal / (SPEED_OF_LIGHT * levelC) : zv;

  /** k d, and the current at the start of the level part over sin k l and over the sinusoid's top. */
  const topLoad = (k: number): { angle: number; level: number } => {
    const x = k * horizontal;
    const turns = Math.floor(x / Math.PI);
    const sin = zv * Math.sin(x - turns * Math.PI);
    const cos = zh * Math.cos(x - turns * Math.PI);
    return { angle: turns * Math.PI + Math.atan2(sin, cos), level: zv / Math.hypot(sin, cos) };
  };
  return uprightModel({
    method,
    source,
    state(frequency, k) {
      const top = topLoad(k);
      const total = k * vertical + top.angle;
      const feed = feedRatio(total);
      const rising = sineCurrent(k, 0, vertical, radius, total / k, 1 / feed);
      const level = sineCurrent(k, 0, horizontal, radius, horizontal, top.level / feed);
      const copper = straightWireResistance(PLAIN_WIRE, diameter, frequency) * (squareLength(rising, k) + squareLength(level, k));
      return { pieces: [rising], over: 'plane', feed: 0, reactance: (-zv * Math.cos(total)) / feed, loss: copper + earthResistance };
    },
    remarks(_, wavelength) {
      const k = (2 * Math.PI) / wavelength;
      return k * vertical + topLoad(k).angle > Math.PI / 2
        ? ['the wire is longer than a quarter wave with its level part: beyond its resonance the model is rough']
        : [];
    },
    own: () => [capacitanceFigure(wire, levelC, uprightC)],
    reactance: {
      formula: 'X = -Z_v cot k(h + d), tan k d = (Z_v/Z_h) tan k l, Z = length/(c C)',
      source,
      holds: 'capacitances within 10 %',
    },
    loss: {
      formula: "R_l = R_e + R' * integral of |I/I(0)|^2 over the wire",
      source: 'Terman, Radio Engineers Handbook (1943) sec. 3; wire taken as copper',
    },
    terms: [
      term('h', 'rising part', vertical, 'm'),
      term('l', 'level part', horizontal, 'm'),
      term('a', 'radius of the wire', radius, 'm'),
      term('R_e', 'earth resistance', earthResistance, 'ohm'),
    ],
    holds: 'below the resonance of the whole wire, about a quarter wave; perfect ground for the radiation',
  });
}

function capacitanceFigure(wire: WireToEarth, levelC: number, uprightC: number): Figure {
  return {
    name: 'aerial.capacitance',
    label: 'capacitance of the wire to ground',
    value: levelC + uprightC,
    unit: 'F',
    method: 'line over ground and upright wire',
    low: 0.9 * (levelC + uprightC),
    high: 1.1 * (levelC + uprightC),
    working: {
      formula: 'C = 2 pi eps0 [l / ln(2h/a) + h / (ln(h/a) - 1)]',
      terms: [
        term('l', 'level part', wire.horizontal, 'm'),
        term('h', 'rising part', wire.vertical, 'm'),
        term('a', 'radius of the wire', wire.diameter / 2, 'm'),
      ],
      source: 'Terman, Radio Engineers Handbook (1943) sec. 2; Howe 1914',
      holds: 'within 10 %; walls, trees and house add to it',
    },
  };
}
