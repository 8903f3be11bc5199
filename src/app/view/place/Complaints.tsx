import type { Problem } from '#set-file';

/** Why a file cannot be taken, line by line. `kept`: what stands as it was. */
export function Complaints({ problems, kept }: { readonly problems: readonly Problem[]; readonly kept: string }) {
  return (
    <>
      <p>{kept}. This stands in the way:</p>
      <ul>
        {problems.map((p) => (
          <li key={`${p.line} ${p.column} ${p.path} ${p.why}`}>
            {p.file === null ? p.path : `Line ${p.line}, column ${p.column}`}
            {p.given && ` (${p.given})`}: {p.why}. {p.mend}
          </li>
        ))}
      </ul>
    </>
  );
}
