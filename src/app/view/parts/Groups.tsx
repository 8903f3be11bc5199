import { type Group, valueText } from '#tell';
import { Figures } from './Figures.tsx';

/** Figures under their headings, rows as a table. */
export function Groups({ groups }: { readonly groups: readonly Group[] }) {
  return (
    <>
      {groups.map((g) => (
        <section key={g.heading} aria-label={g.heading}>
          <h3>{g.heading}</h3>
          <Figures figures={g.figures} caption={g.heading} />
          {g.rows?.[0] && <Rows group={g} />}
          {g.remarks.map((r) => (
            <p key={r} class="about">
              {r}
            </p>
          ))}
        </section>
      ))}
    </>
  );
}

function Rows({ group: { rows = [], rowNames, heading } }: { readonly group: Group }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section class="scroll" tabIndex={0} aria-label={`table: ${heading}`}>
      <table class="figures">
        <thead>
          <tr>
            {rowNames && <th scope="col">{rowNames.head}</th>}
            {rows[0]!.map((f) => (
              <th key={f.name} scope="col">
                {f.label}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, k) => (
            <tr key={rowNames?.names[k] ?? k}>
              {rowNames && <th scope="row">{rowNames.names[k]}</th>}
              {row.map((f) => (
                <td key={f.name}>{valueText(f)}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
