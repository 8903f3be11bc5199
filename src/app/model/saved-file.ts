/** The text of a document to be saved as a file, and a name for it. */
export function savedFile(document: unknown): { readonly name: string; readonly text: string } {
  const given = typeof document === 'object' && document !== null && 'name' in document ? String(document.name) : '';
  const plain = given
    .toLowerCase()
    .replaceAll(/[^\p{L}\p{N}]+/gu, '-')
    .replaceAll(/^-+|-+$/g, '')
    .slice(0, 60);
  return { name: `${plain || 'set'}.json`, text: `${JSON.stringify(document, null, 2)}\n` };
}
