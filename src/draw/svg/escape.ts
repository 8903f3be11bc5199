const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/**
 * Text made safe for an element or an attribute of an XML file.
 *
 * Characters that XML 1.0 does not allow at all (controls, halves of surrogate pairs) become U+FFFD; line breaks and tabs become spaces.
 * Source: XML 1.0 (fifth edition), 2.2 production Char, 2.4.
 */
export function escapeXml(text: string): string {
  let out = '';
  for (const character of text) {
    const code = character.codePointAt(0)!;
    if (code === 9 || code === 10 || code === 13) out += ' ';
    else if (code < 32 || (code >= 0xd800 && code <= 0xdfff) || code === 0xfffe || code === 0xffff) out += '\ufffd';
    else out += ENTITIES[character] ?? character;
  }
  return out;
}
