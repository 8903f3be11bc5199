import { escapeXml } from './escape.ts';

export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** A number as it stands in a drawing: to a micrometre of paper, without needless zeros, never `-0`. */
export function coordinate(value: number): string {
  if (!Number.isFinite(value)) throw new RangeError(`A drawing cannot hold the coordinate ${value}.`);
  return `${Number(value.toFixed(3)) + 0}`;
}

/** One element; `children` are ready-made markup, attributes are escaped here and left out where undefined. */
export function element(name: string, attributes: Attributes, children: readonly string[] = []): string {
  const written = Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(([key, value]) => ` ${key}="${typeof value === 'number' ? coordinate(value) : escapeXml(value!)}"`)
    .join('');
  return children.length === 0 ? `<${name}${written}/>` : `<${name}${written}>${children.join('')}</${name}>`;
}
