import type { Figure } from '#engine';

/** Figures as JSON: by name, each with value, unit, method and working. */
export function figuresJson(figures: readonly Figure[]): Record<string, unknown> {
  return Object.fromEntries(
    figures.map((f) => [
      f.name,
      {
        value: f.value,
        unit: f.unit,
        method: f.method,
        label: f.label,
        ...(f.low === undefined ? {} : { low: f.low, high: f.high }),
        working: f.working,
      },
    ]),
  );
}

export const printJson = (value: unknown): void => console.log(JSON.stringify(value, null, 2));
