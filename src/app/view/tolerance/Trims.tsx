import type { TolerancePlan } from '#jobs';

/** Every way to trim the finished set. */
export function Trims({ trims }: { readonly trims: TolerancePlan['trims'] }) {
  if (trims.length === 0) return null;
  return (
    <section aria-labelledby="trims-heading">
      <h2 id="trims-heading">Ways to trim the finished set</h2>
      <table class="figures" aria-labelledby="trims-heading">
        <thead>
          <tr>
            <th scope="col">what you do</th>
            <th scope="col">the dial moves by</th>
            <th scope="col">louder by</th>
          </tr>
        </thead>
        <tbody>
          {trims.map((t) => (
            <tr key={t.words}>
              <th scope="row">{t.words}</th>
              <td>{t.moves}</td>
              <td>{t.louder}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p class="about">
        Each was tried on the set as meant, with the dial set afresh for the loudness. Plus is up in frequency: a station then stands
        further toward full capacitance.
      </p>
    </section>
  );
}
