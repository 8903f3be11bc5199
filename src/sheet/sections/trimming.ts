import type { Block } from '../flow/block.ts';
import { table } from '../flow/table.ts';
import { heading, paragraph } from '../flow/words.ts';
import type { Context } from './context.ts';

/** What each way of trimming does, tried by working the trimmed set out anew. */
export function trimming({ findings, type, width }: Context): readonly Block[] {
  const signed = (x: number, unit: string, places: number): string => {
    const size = Math.abs(x).toFixed(places);
    return `${Number(size) === 0 ? '' : x < 0 ? '−' : '+'}${size} ${unit}`;
  };
  const moved = (hertz: number): string => (Math.abs(hertz) < 1e6 ? signed(hertz / 1e3, 'kHz', 0) : signed(hertz / 1e6, 'MHz', 2));
  return [
    ...heading('Trimming', width, type),
    ...paragraph(
      `Stations sit at another place of the dial than printed? Do what moves it the right way. A dial that moves up tunes higher at the same angle. Each line was tried on this set, at the place of ${findings.report.station}.`,
      width,
      type,
      { withNext: true },
    ),
    ...(findings.trims.length === 0
      ? paragraph('Nothing of this set can be trimmed where the dial does not tune.', width, type)
      : table(
          [
            { head: 'do this', align: 'left' },
            { head: 'the dial moves by', align: 'right' },
            { head: 'and it is louder by', align: 'right' },
          ],
          findings.trims.map((t) => [t.words, moved(t.moves), t.louder === null ? '-' : signed(t.louder, 'dB', 1)]),
          width,
          type,
        )),
  ];
}
