import { useEffect, useRef } from 'preact/hooks';
import type { Figure } from '#engine';
import { rangeText, valueText } from '#tell';
import { formatFigure } from '#units';

/** How one figure came about: formula, numbers put in, source, where it holds. */
export function Working({ figure, onClose }: { readonly figure: Figure; readonly onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const { working } = figure;
  const range = rangeText(figure);
  return (
    <dialog ref={dialog} class="working" aria-labelledby="working-title" onClose={onClose}>
      <h2 id="working-title">{figure.label}</h2>
      <p>
        <strong>{valueText(figure)}</strong>
        {range && `, likely ${range}`}
      </p>
      <dl>
        <dt>method</dt>
        <dd>{figure.method}</dd>
        <dt>formula</dt>
        <dd>
          <code>{working.formula}</code>
        </dd>
        {working.terms.map((t) => (
          <div key={t.symbol + t.meaning}>
            <dt>{t.meaning || t.symbol}</dt>
            <dd>
              <code>{t.symbol}</code> = {formatFigure(t.value, t.unit, 5)}
            </dd>
          </div>
        ))}
        <dt>source</dt>
        <dd>{working.source}</dd>
        {working.holds && (
          <>
            <dt>holds for</dt>
            <dd>{working.holds}</dd>
          </>
        )}
      </dl>
      <form method="dialog">
        <button type="submit">close</button>
      </form>
    </dialog>
  );
}
