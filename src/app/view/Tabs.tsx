import { VIEWS, type View } from '../model/workbench.ts';

/** Names of all that can be opened; one stop for the tabulator key, arrows go from one to the next. */
export function Tabs({ open, onOpen }: { readonly open: View | null; readonly onOpen: (view: View) => void }) {
  const stop = open ?? VIEWS[0];
  const move = (e: KeyboardEvent): void => {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[e.key];
    const edge = { Home: VIEWS[0], End: VIEWS.at(-1) }[e.key];
    const to = edge ?? (step === undefined ? undefined : VIEWS[(VIEWS.indexOf(stop) + step + VIEWS.length) % VIEWS.length]);
    if (to === undefined) return;
    e.preventDefault();
    onOpen(to);
    document.getElementById(`tab-${to}`)?.focus();
  };
  return (
    <div class="views" role="tablist" id="views" aria-label="steps, and what else can be opened">
      {VIEWS.map((v) => (
        <button
          key={v}
          type="button"
          role="tab"
          id={`tab-${v}`}
          tabIndex={v === stop ? 0 : -1}
          aria-selected={open === v}
          aria-controls="view"
          onKeyDown={move}
          onClick={() => onOpen(v)}
        >
          {v}
        </button>
      ))}
    </div>
  );
}
