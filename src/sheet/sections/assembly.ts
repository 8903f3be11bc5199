import { lengthText, tankWindings, wireToCut } from '#draw';
import { roundWireDirectResistance } from '#engine';
import { cautionsWhere, SOLDERING } from '#tell';
import { formatFigure } from '#units';
import type { Block } from '../flow/block.ts';
import { heading, paragraph, QUIET, WARNING } from '../flow/words.ts';
import type { Context } from './context.ts';
import { aerialTest, detectorTest, earpieceTest, outputResistance, outputTest, throughWire } from './expect.ts';
import { degrees, farads, ohms, tunedText } from './say.ts';

interface Step {
  readonly what: string;
  readonly expect?: string | null;
  readonly caution?: string | undefined;
}

/** In which order to build, and what a meter, a cell and the ears should find after each step. */
export function assembly(context: Context): readonly Block[] {
  const { type, width } = context;
  return [
    ...heading('Order of assembly', width, type, { newPage: true }),
    ...paragraph(
      'A pocket meter, a 1.5 V cell, a resistor of 1 kΩ and your ears are enough to test each step before the next.',
      width,
      type,
      {
        withNext: true,
      },
    ),
    ...steps(context).flatMap(({ what, expect, caution }, i) => [
      ...(caution === undefined ? [] : paragraph(caution, width, type, { indent: 7, colour: WARNING, above: 2.4, withNext: true })),
      ...paragraph(what, width, type, { sign: `${i + 1}.`, indent: 7, above: 2.4, ...(expect ? { withNext: true } : {}) }),
      ...(expect ? paragraph(`Expect: ${expect}`, width, type, { indent: 7, colour: QUIET, above: 0.3 }) : []),
    ]),
  ];
}

function steps({ findings }: Context): readonly Step[] {
  const { set } = findings.meant;
  const { tank, phones, detector } = set;
  const { capacitor } = tank;
  const wound = tank.coil.kind === 'geometry';
  const atOutput = outputTest(outputResistance(phones), findings.reception.receiver.detector.zeroBiasResistance);
  const coil = throughWire(wireResistance(tank));
  const { series, parallel } = capacitor;
  const loud = cautionsWhere(set, findings.reports).find((c) => c.at === 'phones')?.words;
  return [
    { what: phones.earpiece.ears === 2 ? 'Test the phones.' : 'Test the earpiece.', expect: earpieceTest(phones) },
    { what: 'Test the detector.', expect: detectorTest(detector) },
    ...(phones.transformer
      ? [
          {
            what: `Find the windings of the transformer; the one with ${phones.transformer.primaryResistance > phones.transformer.secondaryResistance ? 'more' : 'less'} resistance is the primary and goes to the detector.`,
            expect: `Primary about ${ohms(phones.transformer.primaryResistance)}, secondary about ${ohms(phones.transformer.secondaryResistance)}; nothing from one to the other.`,
          },
        ]
      : []),
    {
      what: 'Mount the tuning capacitor, its frame or rotor to the earth side, where the hand comes near.',
      expect: `No reading between its plates at any angle, through all ${degrees(capacitor.rotation)}.`,
    },
    wound
      ? {
          what: 'Wind the coil as written under Coil. Scrape or sand the wire bright where it will be soldered.',
          expect: `From end to end a meter shows ${coil}; the length on the rule as in the table.`,
        }
      : { what: 'Take the coil that was measured.', expect: 'From end to end a meter shows a few ohms at most: it is one wire.' },
    {
      caution: SOLDERING,
      what: `Solder the coil straight across the capacitor${series === undefined ? '' : ' and the fixed one in series with it'}: ${lengthText(tank.wiring.length)} of wire in all, short, straight and thick; ${tank.joints.count} bright joints.${parallel ? ` Solder the ${farads(parallel)} across the capacitor too.` : ''}`,
      expect: `Across the coil a meter shows ${wound ? coil : 'what it showed before'}, at any angle of the capacitor. The tank alone then tunes to ${findings.alone.map((p) => `${p.frequency === null ? 'nothing' : tunedText(p.frequency)} at ${degrees(p.angle)}`).join(', ')}.`,
    },
    {
      what: `Join the detector ${joined(tank.detectorCoupling)} and to the output${phones.bypass > 0 ? ', and the bypass capacitor from there to earth' : ''}${acrossOutput(phones)}. Solder fast: heat spoils a detector.`,
      expect: atOutput,
    },
    {
      what: `Join the ${phones.transformer ? 'transformer' : 'phones'} to the output${phones.blocking === undefined ? '' : ', through the capacitor in series'}${phones.transformer ? ', and the phones to it' : ''}.`,
      // the cell's whole voltage across the detector, with only the coil in the way, would drive more through it than it is made for
      expect: 'Touch the output for a moment with a 1.5 V cell and 1 kΩ in series, which spares the detector: a click in the phones.',
    },
    ...(set.aerial.kind === 'coil'
      ? []
      : [
          { what: 'Cut the aerial and put it up as written under Aerial; mind the cautions there.', expect: aerialTest(set) },
          {
            what: `Join the aerial ${tank.aerialCoupling ? joined(tank.aerialCoupling) : 'to the coil'}.`,
            expect: 'With the first touch a faint crackle, or nothing: both are right.',
          },
        ]),
    { caution: loud, what: first(findings), expect: firstHeard(findings) },
    { what: 'Trim it by the table further on, then put the printed scale behind the knob and glue it down.' },
  ];
}

/** Wire of the coil with its leads, to direct current [ohm]; 0 where the coil is given by its values. */
function wireResistance(tank: Context['findings']['meant']['set']['tank']): number {
  const coil = tankWindings(tank)?.[0];
  return coil && tank.coil.kind === 'geometry' ? roundWireDirectResistance(coil.wireDiameter, wireToCut(coil), tank.coil.metal) : 0;
}

/** What is soldered across the output besides the bypass. */
function acrossOutput({ load, choke }: Context['findings']['meant']['set']['phones']): string {
  const parts = [...(load === undefined ? [] : ['the resistor']), ...(choke ? ['the choke'] : [])];
  return parts.length === 0 ? '' : `, with ${parts.join(' and ')} across it`;
}

function joined(c: Context['findings']['meant']['set']['tank']['detectorCoupling']): string {
  switch (c.kind) {
    case 'direct':
      return 'to the hot end of the coil, the end that is not earthed,';
    case 'tap':
      return 'to its tap';
    case 'link':
      return 'to its link';
    case 'series-capacitor':
      return 'through its capacitor to the hot end of the coil';
  }
}

function first({ report }: Context['findings']): string {
  const { station, dial } = report;
  if ('missing' in dial) return `In a quiet room, turn the dial through. ${station} is not on it as reckoned: trim first.`;
  const [a, b] = dial.points;
  return `In a quiet room, turn the dial slowly to ${degrees(a!.angle)} for ${station}${b ? `; it comes again at ${degrees(b.angle)}, with next to nothing between` : ''}.`;
}

function firstHeard({ report }: Context['findings']): string {
  const { verdict } = report;
  if (verdict.level === null) return 'Nothing yet.';
  return `Speech of about ${formatFigure(verdict.level, 'dB SPL', 3)} at the ear; heard at about ${Math.min(99, Math.max(1, Math.round(100 * verdict.odds)))} of 100 such places. Nothing at all: go back through the tests, the detector first, then the joints.`;
}
