import type { TankDescription } from '#engine';
import { DIAMETER, lengthText, trimmed } from '../aerial/length-text.ts';
import { turnsWords } from './turns-words.ts';
import { tankWindings, type Wound, windingLength } from './wound.ts';

/** Turns nearer than this part of the wire's thickness are wound close: enamel and a steady hand leave as much. */
const CLOSE = 0.15;
/** A gap is said in thicknesses of the wire only where a strip of wire wound along with it would make it: up to so many. */
const MOST_THICKNESSES = 3;

/**
 * How to wind the tank's coil and its links, one step to a line; null where the coil is given by its electrical values.
 *
 * Lengths of wire are those of the helix through the middle of the wire, with the leads.
 */
export function windingSteps(tank: TankDescription): readonly string[] | null {
  const windings = tankWindings(tank);
  if (!windings) return null;
  const [coil, ...links] = windings;
  return [...stepsOf(coil!), ...links.flatMap((link) => linkSteps(link, coil!))];
}

/** How to wind one winding. */
export function stepsOf(w: Wound): readonly string[] {
  const wire = `${DIAMETER} ${lengthText(w.wireDiameter)} ${w.metal}`;
  const hold = w.former ? 'on a former that stays in' : 'on a former or drill bit that comes out';
  return [
    `Cut ${cutWords(w)} of ${wire} wire.`,
    `Wind ${turnsWords(w.turns)} ${w.name === 'frame' ? 'on a frame' : hold}, ${lengthText(w.innerDiameter)} across.`,
    [spacingWords(w), `From the middle of the wire at one end to that at the other it is ${lengthText(windingLength(w))}.`]
      .filter((s) => s !== '')
      .join(' '),
    ...w.taps.map(
      (t) =>
        `Tap for the ${t.roles.join(' and the ')}: ${turnsWords(t.turns)} from the cold end, ${lengthText(t.turns * turnLength(w))} along the wire from the first turn's beginning.`,
    ),
  ];
}

function linkSteps(link: Wound, coil: Wound): readonly string[] {
  const gap = -link.start - windingLength(link);
  const wire = `${DIAMETER} ${lengthText(link.wireDiameter)} ${link.metal}`;
  const where =
    gap > 1e-6
      ? `its nearer end ${lengthText(gap)} from the coil's cold end`
      : gap < -1e-6
        ? `pushed ${lengthText(-gap)} into the coil from its cold end`
        : "right beside the coil's cold end";
  const across =
    Math.abs(link.innerDiameter - coil.innerDiameter) < 1e-6
      ? 'on the same axis and as wide as the coil'
      : `on the same axis, ${lengthText(link.innerDiameter)} across inside`;
  return [
    `For the ${link.name} cut ${cutWords(link)} of ${wire} wire.`,
    [`Wind ${turnsWords(link.turns)} ${across}, ${where}.`, spacingWords(link)].filter((s) => s !== '').join(' '),
  ];
}

/** Wire in one turn [m]: a helix through the middle of the wire. */
const turnLength = (w: Wound): number => Math.hypot(Math.PI * (w.innerDiameter + w.wireDiameter), w.pitch);

/** Wire in the winding and its leads, where these are known [m]. */
export const wireToCut = (w: Wound): number => w.turns * turnLength(w) + 2 * (w.leadLength ?? 0);

function cutWords(w: Wound): string {
  const length = lengthText(wireToCut(w));
  if (w.leadLength === null) return `${length} and what the leads need`;
  return w.leadLength === 0 ? length : `${length} (${lengthText(w.leadLength)} of it at each end for leads)`;
}

function spacingWords(w: Wound): string {
  if (w.turns <= 1) return '';
  const gap = w.pitch - w.wireDiameter;
  const thicknesses = gap / w.wireDiameter;
  if (thicknesses < CLOSE) return `The turns lie close, ${lengthText(w.pitch)} from middle to middle.`;
  const count = trimmed(thicknesses, 1);
  const near =
    thicknesses > MOST_THICKNESSES ? '' : count === '1' ? ', as much as the wire is thick' : `, ${count} thicknesses of the wire`;
  return `Leave ${lengthText(gap)} between the turns${near}: ${lengthText(w.pitch)} from middle to middle.`;
}
