import type { Problem } from '#set-file';

/** What stands in the way, one line each: where, what was given, why it cannot be, how to mend it. */
export function Problems({ problems }: { readonly problems: readonly Problem[] }) {
  return (
    <ul>
      {problems.map((p) => (
        <li key={`${p.line} ${p.column} ${p.path} ${p.why}`}>
          {p.file === null ? p.path : `Line ${p.line}, column ${p.column}`}
          {p.given && ` (${p.given})`}: {p.why}. {p.mend}
        </li>
      ))}
    </ul>
  );
}
