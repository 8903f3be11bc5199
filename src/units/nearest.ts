/**
 * Number of single-letter slips between two words: a letter too many, too few, wrong, or two exchanged.
 *
 * Source: the optimal string alignment form of Damerau's distance (Comm. ACM 7, 1964, 171).
 */
function slips(a: string, b: string): number {
  let before: number[] = [];
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let best = Math.min(row[j]! + 1, next[j - 1]! + 1, row[j - 1]! + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, before[j - 2]! + 1);
      next.push(best);
    }
    before = row;
    row = next;
  }
  return row[b.length]!;
}

/** The known word that was most likely meant, or null if none is near: up to a third of the letters may be wrong. */
export function nearestWord(word: string, known: Iterable<string>): string | null {
  const given = word.slice(0, 60).toLowerCase();
  let best: string | null = null;
  let fewest = Number.POSITIVE_INFINITY;
  for (const candidate of known) {
    const lower = candidate.toLowerCase();
    const allowed = Math.max(1, Math.floor(Math.max(given.length, lower.length) / 3));
    // a word cut short, `max` for `maximum`, is as near as one slip
    const n = given.length >= 3 && lower.startsWith(given) ? Math.min(1, slips(given, lower)) : slips(given, lower);
    if (n <= allowed && n < fewest) {
      fewest = n;
      best = candidate;
    }
  }
  return best;
}
