import { DIAMETER, lengthText, tankWindings, wireToCut } from '#draw';
import { bestByStage } from '#find';
import { gainWords } from '#tell';
import type { Block } from '../flow/block.ts';
import { together } from '../flow/place.ts';
import { table } from '../flow/table.ts';
import { heading, list, paragraph, QUIET, subheading } from '../flow/words.ts';
import type { Context } from './context.ts';
import { OUTCOME } from './front.ts';
import { partRows } from './part-rows.ts';

const KINDS = {
  wires: 'wire of the coil',
  capacitors: 'tuning capacitor',
  detectors: 'detector',
  transformers: 'transformer',
  earpieces: 'earpiece',
} as const;

/** What to have on the bench, what could stand in for it, and what would be better. */
export function parts({ findings, type, width, paper }: Context): readonly Block[] {
  const { set } = findings.meant;
  const wire = (tankWindings(set.tank) ?? []).map((w) => ({
    name: `wire for the ${w.name}`,
    value: `${lengthText(wireToCut(w))}${w.leadLength === null ? ' and its leads' : ''}, ${DIAMETER} ${lengthText(w.wireDiameter)} ${w.metal}`,
  }));
  const estimated = findings.parts.filter((p) => p.estimate);
  return [
    ...heading('Parts', width, type),
    ...table(
      [
        { head: 'part', align: 'left' },
        { head: 'what it has to be', align: 'left' },
      ],
      [...wire, ...partRows(set, findings.parts)].map((r) => [r.name, r.value]),
      width,
      type,
    ),
    ...paragraph(
      `${set.aerial.kind === 'coil' ? 'The coil is the aerial too.' : 'The aerial has a list of its own.'} Besides: solder, sandpaper, a dry board or box that is no metal, a knob, a rule.`,
      width,
      type,
      {
        size: 3,
        colour: QUIET,
      },
    ),
    ...(estimated.length === 0
      ? []
      : paragraph(
          `Typical values, not those of your piece: ${estimated.map((p) => p.title).join('; ')}. Measured ones make this sheet truer.`,
          width,
          type,
          { size: 3, colour: QUIET },
        )),
    ...substitutes(),
    ...better(),
  ];

  function substitutes(): readonly Block[] {
    if (findings.substitutes.length === 0) return [];
    return [
      ...subheading('What could stand in', width, type),
      ...paragraph(
        'Each was tried in this set by working it out anew, with the dial set afresh. Another wire, capacitor or detector moves the dial: the printed scale then no longer holds.',
        width,
        type,
        { withNext: true },
      ),
      ...table(
        [
          { head: 'in place of', align: 'left' },
          { head: 'this', align: 'left' },
          { head: 'louder by', align: 'right' },
          { head: 'then', align: 'left' },
        ],
        findings.substitutes.map((s) => [
          KINDS[s.category],
          s.title,
          s.gain === null ? '-' : `${s.gain >= 0 ? '+' : '−'}${Math.abs(s.gain).toFixed(1)} dB`,
          OUTCOME[s.outcome],
        ]),
        width,
        type,
      ),
    ];
  }

  function better(): readonly Block[] {
    const advice = bestByStage(findings.advice);
    if (advice.length === 0) return [];
    const lines = [
      ...subheading('What would help most, of each stage the best', width, type),
      ...list(
        advice.map((a) => `${a.change.words} ${gainWords(a)}`),
        width,
        type,
      ),
    ];
    return together(lines, paper);
  }
}
