import type { Series } from '#draw';

/** Curves as a table: one column for x, one for each curve; rows by ascending x, empty where a curve has no point. */
export function seriesCsv(
  series: readonly Series[],
  x: { readonly label: string; readonly unit?: string },
  unit: string | undefined,
): string {
  const at = new Map<number, (number | null)[]>();
  series.forEach((s, k) => {
    for (const p of s.points) {
      const row = at.get(p.x) ?? series.map(() => null);
      row[k] = p.y;
      at.set(p.x, row);
    }
  });
  const named = (label: string, u: string | undefined): string => quoted(u ? `${label} [${u}]` : label);
  const head = [named(x.label, x.unit), ...series.map((s) => named(s.label, unit))].join(',');
  const rows = [...at.entries()].toSorted(([a], [b]) => a - b).map(([px, ys]) => [px, ...ys.map((y) => y ?? '')].join(','));
  return `${[head, ...rows].join('\r\n')}\r\n`;
}

const quoted = (text: string): string => (/[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
