import type { PaperName, SheetPage } from '#sheet';

/** The pages as they will be printed; to be printed, each has a page of its own kind. */
export function Pages({ pages, paper }: { readonly pages: readonly SheetPage[]; readonly paper: PaperName }) {
  return (
    <ol class="sheet-pages" aria-label="pages of the sheet">
      {pages.map(({ svg, width, height }, k) => (
        <li
          // the same place of the sheet, whatever is on it
          key={k}
          class={`sheet-page on-${paper}${width > height ? '-turned' : ''}`}
          // drawn by the engine's own pen: elements, numbers and escaped text, nothing else
          dangerouslySetInnerHTML={{ __html: svg }}
        />
      ))}
    </ol>
  );
}
