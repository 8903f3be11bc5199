export type Path = readonly (string | number)[];

/** A copy of a document with a value at a path, or without it where it is undefined; objects on the way are made where they are missing. */
export function withValue(document: unknown, path: Path, value: unknown): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(document)) {
    const list = [...(document as readonly unknown[])];
    const at = Number(key);
    if (rest.length === 0 && value === undefined) list.splice(at, 1);
    else list[at] = withValue(list[at], rest, value);
    return list;
  }
  const owner = typeof document === 'object' && document !== null ? (document as Record<string, unknown>) : {};
  const inside = Object.hasOwn(owner, key) ? owner[key] : undefined;
  const next = withValue(inside, rest, value);
  const entries = Object.entries(owner).filter(([k]) => k !== String(key));
  if (next === undefined) return Object.fromEntries(entries);
  // a key that was there keeps its place
  if (Object.hasOwn(owner, key)) return Object.fromEntries(Object.entries(owner).map(([k, v]) => [k, k === String(key) ? next : v]));
  return Object.fromEntries([...entries, [String(key), next]]);
}
