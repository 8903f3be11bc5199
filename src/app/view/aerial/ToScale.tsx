import { useMemo, useState } from 'preact/hooks';
import { drawDescribedAerial } from '#draw';
import type { WiresDescription } from '#engine';
import { Plot } from '../parts/Plot.tsx';

/** The aerial to scale with every length and what to cut: drawn when it is asked for. */
export function ToScale({ description }: { readonly description: WiresDescription }) {
  const [open, setOpen] = useState(false);
  const svg = useMemo(() => (open ? drawDescribedAerial(description, { theme: 'host', id: 'scale-plot' }) : null), [open, description]);
  return (
    <details onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>Drawing to scale, and what to cut</summary>
      {svg && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
        <section class="scroll to-scale" tabIndex={0} aria-label="drawing to scale">
          <Plot svg={svg} name="Aerial to scale" />
        </section>
      )}
    </details>
  );
}
