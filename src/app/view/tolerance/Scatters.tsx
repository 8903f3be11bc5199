import type { ScatterRow } from '#jobs';
import { NOT_SCATTERED } from '#tell';

/** Everything that comes out otherwise each time, how far, and what comes of it. */
export function Scatters({ rows }: { readonly rows: readonly ScatterRow[] }) {
  return (
    <details class="others">
      <summary>every error that was thrown in: {rows.length}</summary>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section class="scroll" tabIndex={0} aria-label="table: every error">
        <table class="figures">
          <thead>
            <tr>
              <th scope="col">what</th>
              <th scope="col">how far it usually is out</th>
              <th scope="col">its part in the dial</th>
              <th scope="col">its part in the loudness</th>
            </tr>
          </thead>
          <tbody>
            {rows.map((r) => (
              <tr key={r.key}>
                <th scope="row">{r.label}</th>
                <td>{r.extent}</td>
                <td>{r.dial ?? 'not known yet'}</td>
                <td>{r.loudness ?? 'not known yet'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <p>{NOT_SCATTERED}</p>
    </details>
  );
}
