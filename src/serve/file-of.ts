import { realpath, stat } from 'node:fs/promises';
import { join, sep } from 'node:path';

/**
 * Names from the folder down that the target of a request asks for, or null where no browser would ask so: climbing or hidden names, separators or
 * NUL in disguise, bytes that are no UTF-8.
 *
 * @param target - as it stands in the request: `/assets/a%20b.js?x`
 */
export function namesOf(target: string): string[] | null {
  if (!target.startsWith('/')) return null;
  const path = target.slice(1).split(/[?#]/, 1)[0] as string;
  const names: string[] = [];
  for (const part of path.split('/')) {
    let name: string;
    try {
      name = decodeURIComponent(part);
    } catch {
      return null;
    }
    // one decoding only: what is still encoded then is a name like any other, and there is no such file. A leading dot climbs or is hidden; on
    // Windows a colon is a drive or a stream
    if (name.startsWith('.') || /[/\\:\0]/.test(name)) return null;
    names.push(name);
  }
  // an empty last name asks for the folder, others are a doubled slash
  if (names.slice(0, -1).includes('')) return null;
  if (names.at(-1) === '') names[names.length - 1] = 'index.html';
  return names;
}

/**
 * File below the folder, or null: not there, not a file, or led out of the folder by a link.
 *
 * @param folder - its real path, links followed
 */
export async function fileOf(folder: string, names: readonly string[]): Promise<string | null> {
  try {
    const path = await realpath(join(folder, ...names));
    return path.startsWith(folder + sep) && (await stat(path)).isFile() ? path : null;
  } catch {
    return null;
  }
}
