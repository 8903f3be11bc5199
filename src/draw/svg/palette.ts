/** What a line or an area stands for; each has a colour of its own by day and by night. */
export type Role =
  | 'paper'
  | 'ink'
  | 'quiet'
  | 'faint'
  | 'accent'
  | 'series-1'
  | 'series-2'
  | 'series-3'
  | 'series-4'
  | 'series-5'
  | 'series-6';

interface Shade {
  readonly light: string;
  readonly dark: string;
}

/** The curves' colours keep apart for the common kinds of colour blindness, and each curve has its own dash besides. */
const SHADES: Readonly<Record<Role, Shade>> = {
  paper: { light: '#ffffff', dark: '#14191f' },
  ink: { light: '#1c2630', dark: '#e6ebf0' },
  quiet: { light: '#52616f', dark: '#a3b1be' },
  faint: { light: '#c9d1d8', dark: '#3b4753' },
  accent: { light: '#b23c17', dark: '#ff9a6b' },
  'series-1': { light: '#0a5fa8', dark: '#6db7f5' },
  'series-2': { light: '#0b7a5c', dark: '#55cfa6' },
  'series-3': { light: '#8f3b86', dark: '#dd96d4' },
  'series-4': { light: '#7a5c00', dark: '#dcc04a' },
  'series-5': { light: '#4b5a67', dark: '#b4c2cf' },
  'series-6': { light: '#007a8f', dark: '#5ccfe0' },
};
const ROLES = Object.keys(SHADES) as readonly Role[];

/**
 * Where the colours come from. `auto`: the file carries both sets and follows the reader's screen, printing always light; `light`, `dark`: that
 * set, no style sheet; `host`: light in the file, to be overruled by the page, which takes `drawingStyles` into its own style sheet.
 */
export type Theme = 'auto' | 'light' | 'dark' | 'host';

/** Class of the outermost element; all rules are below it. */
export const ROOT_CLASS = 'earshot-drawing';

/** Colour of a role as a plain attribute, for readers that know no style sheets. */
export function shade(role: Role, theme: Theme): string {
  return SHADES[role][theme === 'dark' ? 'dark' : 'light'];
}

/** Style sheet of the drawings. A page sets `--drawing-ink` and its sisters to colour them its own way. */
export function drawingStyles(): string {
  const rules = (which: keyof Shade) =>
    ROLES.map((role) => {
      const colour = `var(--drawing-${role},${SHADES[role][which]})`;
      return `.${ROOT_CLASS} .s-${role}{stroke:${colour}}.${ROOT_CLASS} .f-${role}{fill:${colour}}`;
    }).join('');
  return `${rules('light')}@media screen and (prefers-color-scheme:dark){${rules('dark')}}`;
}
