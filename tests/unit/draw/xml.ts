/** An element of a parsed file. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string | undefined>>;
  readonly children: readonly (Element | string)[];
}

const ENTITIES: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };
const isName = (c: string) => (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || '-_:.'.includes(c);
const isSpace = (c: string) => c === ' ' || c === '\n' || c === '\t' || c === '\r';

/**
 * Reads a file that consists of elements, attributes and text, and refuses everything that is not well-formed XML 1.0: tags that do not
 * match, attributes twice or without quotes, bare `&` and `<`, forbidden characters, anything after the root. Declarations, comments and
 * the like are refused too: a drawing has none.
 */
export function parseXml(text: string): Element {
  let at = 0;
  const fail = (why: string): never => {
    throw new Error(`${why} at ${at}: ${text.slice(Math.max(0, at - 30), at + 30)}`);
  };
  for (const character of text) {
    const code = character.codePointAt(0)!;
    const allowed =
      code === 9 || code === 10 || code === 13 || (code >= 32 && code < 0xd800) || (code >= 0xe000 && code < 0xfffe) || code > 0xffff;
    if (!allowed) fail(`character ${code} is not allowed`);
  }
  const name = (): string => {
    const start = at;
    while (at < text.length && isName(text[at]!)) at++;
    return at > start ? text.slice(start, at) : fail('a name is missing');
  };
  const spaces = () => {
    while (at < text.length && isSpace(text[at]!)) at++;
  };
  const characters = (until: string): string => {
    let out = '';
    while (at < text.length && text[at] !== until) {
      const c = text[at]!;
      if (c === '<') fail('a bare <');
      if (c === '&') {
        const end = text.indexOf(';', at);
        const entity = end > at ? ENTITIES[text.slice(at + 1, end)] : undefined;
        if (entity === undefined) fail('a bare &');
        out += entity;
        at = end + 1;
      } else {
        out += c;
        at++;
      }
    }
    return at < text.length || until === '<' ? out : fail(`no closing ${until}`);
  };
  const element = (): Element => {
    if (text[at] !== '<') fail('an element is missing');
    at++;
    const tag = name();
    const attributes: Record<string, string> = {};
    for (;;) {
      const before = at;
      spaces();
      if (text[at] === '>' || text[at] === '/') break;
      if (at === before) fail('a space is missing');
      const key = name();
      if (text[at] !== '=' || text[at + 1] !== '"') fail('an attribute without quotes');
      at += 2;
      if (key in attributes) fail(`attribute ${key} twice`);
      attributes[key] = characters('"');
      at++;
    }
    if (text[at] === '/') {
      if (text[at + 1] !== '>') fail('a lone /');
      at += 2;
      return { name: tag, attributes, children: [] };
    }
    at++;
    const children: (Element | string)[] = [];
    for (;;) {
      const run = characters('<');
      if (run !== '') children.push(run);
      if (at >= text.length) fail(`${tag} is not closed`);
      if (text[at + 1] !== '/') {
        children.push(element());
        continue;
      }
      at += 2;
      if (name() !== tag) fail(`${tag} is closed by another tag`);
      spaces();
      if (text[at] !== '>') fail('a tag is not closed');
      at++;
      return { name: tag, attributes, children };
    }
  };
  const root = element();
  spaces();
  if (at < text.length) fail('something after the root');
  return root;
}

/** All elements below one, itself first. */
export function everyElement(root: Element): readonly Element[] {
  return [root, ...root.children.flatMap((c) => (typeof c === 'string' ? [] : everyElement(c)))];
}

export const textOf = (e: Element): string => e.children.map((c) => (typeof c === 'string' ? c : textOf(c))).join('');
