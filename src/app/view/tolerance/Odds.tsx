import type { ToleranceSlice } from '#jobs';
import { GIVE_OR_TAKE } from '#tell';

/** How often it is heard, how far the dial scatters, how loud it is. */
export function Odds({ known }: { readonly known: ToleranceSlice }) {
  return (
    <section aria-labelledby="odds-heading">
      <h2 id="odds-heading">How it comes out</h2>
      <dl class="odds">
        {known.lines.map(({ label, text }) => (
          <div key={label}>
            <dt>{label}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <p class="about">{GIVE_OR_TAKE}</p>
    </section>
  );
}
