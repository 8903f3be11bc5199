import { lengthText } from '#draw';
import type { Figure } from '#engine';
import { type Group, rangeText, valueText } from '#tell';
import { formatFigure } from '#units';
import { bold, dim } from './colour.ts';
import { figuresJson, printJson } from './figures-json.ts';
import { workings } from './pick.ts';
import { table, wrap } from './table.ts';

/** A group whose rows may be written in a way of their own. */
export interface Printed extends Group {
  readonly rowText?: (f: Figure) => string;
}

/** Groups as a person reads them, or as the workings of the one figure asked for. */
export function groupsText(groups: readonly Printed[], working: string | undefined): string {
  if (working === undefined) return groups.map(groupText).join('\n\n');
  return workings(
    groups.map((g) => ({ heading: g.heading, figures: [...g.figures, ...(g.rows?.[0] ?? [])] })),
    working,
  );
}

export function groupsJson(groups: readonly Printed[]): readonly Record<string, unknown>[] {
  return groups.map((g) => ({
    name: g.heading,
    figures: figuresJson(g.figures),
    ...(g.rows ? { rows: g.rows.map((row, i) => ({ ...(g.rowNames && { name: g.rowNames.names[i] }), ...figuresJson(row) })) } : {}),
    remarks: g.remarks,
  }));
}

/** As text, as workings, or as one JSON object with `about` before the groups. */
export function printGroups(
  groups: readonly Printed[],
  options: { readonly json?: boolean; readonly working?: string },
  about: Readonly<Record<string, unknown>>,
): void {
  if (options.json && options.working === undefined) printJson({ ...about, groups: groupsJson(groups) });
  else console.log(groupsText(groups, options.working));
}

function groupText(g: Printed): string {
  const lines = [bold(g.heading)];
  if (g.figures.length > 0)
    lines.push(
      table(
        [
          { head: 'figure', align: 'left' },
          { head: 'value', align: 'right' },
          { head: 'likely', align: 'left' },
          { head: 'name', align: 'left' },
        ],
        g.figures.map((f) => [f.label, valueText(f), rangeText(f), dim(f.name)]),
      ),
    );
  const rowText = g.rowText ?? (g.toTheMillimetre ? offTheRule : valueText);
  if (g.rows?.[0])
    lines.push(
      table(
        [
          ...(g.rowNames ? [{ head: g.rowNames.head, align: 'left' as const }] : []),
          ...g.rows[0].map((f) => ({ head: wrap(f.label, 18), align: 'right' as const })),
        ],
        g.rows.map((row, i) => [...(g.rowNames ? [g.rowNames.names[i]!] : []), ...row.map(rowText)]),
      ),
    );
  return [...lines, ...g.remarks.map((r) => wrap(`- ${r}`, 96, '  '))].join('\n');
}

/** As it is read off a rule. */
const offTheRule = (f: Figure): string => (f.unit === 'm' ? lengthText(f.value ?? 0) : formatFigure(f.value, f.unit));
