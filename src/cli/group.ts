import type { Figure } from '#engine';
import { rangeText, valueText } from '#tell';
import { bold, dim } from './colour.ts';
import { figuresJson, printJson } from './figures-json.ts';
import { workings } from './pick.ts';
import { table, wrap } from './table.ts';

/** Figures under one heading: a station's, or the part's own. */
export interface Group {
  readonly heading: string;
  readonly figures: readonly Figure[];
  readonly remarks: readonly string[];
  /** figures in rows, such as the places of a dial */
  readonly rows?: readonly (readonly Figure[])[];
  /** what each row is about, where its figures do not say it */
  readonly rowNames?: { readonly head: string; readonly names: readonly string[] };
  /** how the rows' figures are written for people, where three digits will not do */
  readonly rowText?: (f: Figure) => string;
}

/** Groups as a person reads them, or as the workings of the one figure asked for. */
export function groupsText(groups: readonly Group[], working: string | undefined): string {
  if (working === undefined) return groups.map(groupText).join('\n\n');
  return workings(
    groups.map((g) => ({ heading: g.heading, figures: [...g.figures, ...(g.rows?.[0] ?? [])] })),
    working,
  );
}

export function groupsJson(groups: readonly Group[]): readonly Record<string, unknown>[] {
  return groups.map((g) => ({
    name: g.heading,
    figures: figuresJson(g.figures),
    ...(g.rows ? { rows: g.rows.map((row, i) => ({ ...(g.rowNames && { name: g.rowNames.names[i] }), ...figuresJson(row) })) } : {}),
    remarks: g.remarks,
  }));
}

/** As text, as workings, or as one JSON object with `about` before the groups. */
export function printGroups(
  groups: readonly Group[],
  options: { readonly json?: boolean; readonly working?: string },
  about: Readonly<Record<string, unknown>>,
): void {
  if (options.json && options.working === undefined) printJson({ ...about, groups: groupsJson(groups) });
  else console.log(groupsText(groups, options.working));
}

function groupText(g: Group): string {
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
  const { rowText = valueText } = g;
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
