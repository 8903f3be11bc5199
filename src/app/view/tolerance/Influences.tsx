import type { ToleranceSlice } from '#jobs';

interface Props {
  readonly id: string;
  readonly heading: string;
  readonly words: ToleranceSlice['dial'];
  /** what a usual error does, before its size */
  readonly deviation: string;
}

/** The three errors that matter most, what each does, and how to trim it. */
export function Influences({ id, heading, words, deviation }: Props) {
  return (
    <section aria-labelledby={id}>
      <h2 id={id}>{heading}</h2>
      {words.rows.length > 0 && (
        <table class="figures stacked" aria-labelledby={id}>
          <thead>
            <tr>
              <th scope="col">what comes out otherwise</th>
              <th scope="col">its part in all</th>
              <th scope="col">a usual error {deviation}</th>
              <th scope="col">trim it so, once it is built</th>
            </tr>
          </thead>
          <tbody>
            {words.rows.map((r) => (
              <tr key={r.label}>
                <th scope="row">
                  {r.label} <small>{r.extent}</small>
                </th>
                <td data-head="its part in all">{r.share}</td>
                <td data-head={`a usual error ${deviation}`}>{r.deviation}</td>
                <td data-head="trim it so">
                  {r.mends.map((m) => (
                    <span key={m} class="mend">
                      {m}
                    </span>
                  ))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      <p class="about">
        {words.trust} {words.beyond}
      </p>
    </section>
  );
}
