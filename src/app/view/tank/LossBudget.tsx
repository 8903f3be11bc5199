import { useState } from 'preact/hooks';
import type { Figure } from '#engine';
import { valueText } from '#tell';
import { Working } from '../parts/Working.tsx';

const LOSS = 'tank.loss.';

/** Every loss of the tank as a resistance in series with the coil, largest first, with its share of the whole; each opens its working. */
export function LossBudget({ figures }: { readonly figures: readonly Figure[] }) {
  const [open, setOpen] = useState<Figure | null>(null);
  const total = figures.find((f) => f.name === `${LOSS}total`);
  const losses = figures
    .filter((f) => f.name.startsWith(LOSS) && f !== total)
    .map((figure) => ({ figure, share: shareOf(figure) }))
    .toSorted((a, b) => b.share - a.share);
  const q = figures.find((f) => f.name === 'tank.unloadedQ');
  if (!total) return null;
  return (
    <>
      <ol class="budget">
        {losses.map(({ figure, share }) => (
          <li key={figure.name}>
            <span class="budget-name">{figure.label.replace(/^loss: /, '')}</span>
            <span class="budget-value">
              {valueText(figure)} <span class="budget-share">{shareText(share)}</span>
            </span>
            <button type="button" aria-label={`working of ${figure.label}`} onClick={() => setOpen(figure)}>
              why
            </button>
            <span class="budget-bar" aria-hidden="true">
              <span style={{ width: `${100 * share}%` }} />
            </span>
          </li>
        ))}
      </ol>
      <p class="about">
        Each as if it were a resistor in series with the coil; together {valueText(total)}
        {q && `, which leaves the tank alone a Q of ${valueText(q)}`}.
      </p>
      {open && <Working figure={open} onClose={() => setOpen(null)} />}
    </>
  );
}

/** Of all losses, as its working says. */
const shareOf = (f: Figure): number => f.working.terms.find((t) => t.meaning === 'share of all losses')?.value ?? 0;

const shareText = (share: number): string => (share < 0.001 ? '< 0.1 %' : `${(100 * share).toFixed(share < 0.1 ? 1 : 0)} %`);
