/** An element of a drawing, with its attributes and what is in it. */
export interface SvgElement {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | undefined>>;
  readonly children: readonly SvgElement[];
  /** characters between its tags */
  readonly text: string;
}

const ENTITIES: Readonly<Record<string, string>> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" };
const TAG = /<(\/?)([a-z]+)((?:\s+[\w:-]+="[^"]*")*)\s*(\/?)>/gy;
const ATTRIBUTE = /([\w:-]+)="([^"]*)"/g;

/**
 * Reads a drawing as `src/draw` writes it: elements, attributes in double quotes, five entities; no comments, no declarations.
 *
 * @throws RangeError for anything else
 */
export function readSvg(svg: string): SvgElement {
  const text = svg.trim();
  const stack: { name: string; attributes: Record<string, string>; children: SvgElement[]; text: string }[] = [
    { name: '', attributes: {}, children: [], text: '' },
  ];
  let at = 0;
  while (at < text.length) {
    const open = text.indexOf('<', at);
    const words = text.slice(at, open < 0 ? text.length : open);
    stack.at(-1)!.text += plain(words);
    if (open < 0) break;
    TAG.lastIndex = open;
    const tag = TAG.exec(text);
    if (!tag) throw new RangeError(`Not a drawing of ours: ${JSON.stringify(text.slice(open, open + 40))}`);
    at = TAG.lastIndex;
    const [, closing, name, attributes, empty] = tag;
    if (closing === '/') {
      const done = stack.pop();
      if (done?.name !== name || stack.length === 0) throw new RangeError(`</${name}> closes nothing.`);
      stack.at(-1)!.children.push(done!);
      continue;
    }
    const element = {
      name: name!,
      attributes: Object.fromEntries([...attributes!.matchAll(ATTRIBUTE)].map((a) => [a[1]!, plain(a[2]!)])),
      children: [],
      text: '',
    };
    if (empty === '/') stack.at(-1)!.children.push(element);
    else stack.push(element);
  }
  const [root, more] = stack[0]!.children;
  if (stack.length !== 1 || root?.name !== 'svg' || more) throw new RangeError('A drawing is one svg element, closed.');
  return root;
}

const plain = (text: string): string => text.replace(/&(?:amp|lt|gt|quot|#39);/g, (e) => ENTITIES[e]!);
