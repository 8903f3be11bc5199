import { useState } from 'preact/hooks';
import type { Figure } from '#engine';
import { rangeText, valueText } from '#tell';
import { Working } from './Working.tsx';

/** Figures one below the other; each opens its working. */
export function Figures({ figures, caption }: { readonly figures: readonly Figure[]; readonly caption: string }) {
  const [open, setOpen] = useState<Figure | null>(null);
  if (figures.length === 0) return null;
  return (
    <div class="scroll">
      <table class="figures">
        <caption class="visually-hidden">{caption}</caption>
        <tbody>
          {figures.map((f) => (
            <tr key={f.name}>
              <th scope="row">{f.label}</th>
              <td class="value">{valueText(f)}</td>
              <td>{rangeText(f)}</td>
              <td>
                <button type="button" aria-label={`working of ${f.label}`} onClick={() => setOpen(f)}>
                  why
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {open && <Working figure={open} onClose={() => setOpen(null)} />}
    </div>
  );
}
