import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';

interface Props {
  /** as the file input takes it: `.csv,text/csv` */
  readonly accept: string;
  /** what is to be picked, for those who do not see the button */
  readonly what: string;
  readonly multiple?: boolean;
  readonly onPick: (files: readonly File[]) => void;
  /** on the button */
  readonly children: ComponentChildren;
}

/** A button by which files of the person's own are picked; the same file can be picked again. */
export function PickFile({ accept, what, multiple = false, onPick, children }: Props) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <input
        ref={input}
        type="file"
        accept={accept}
        multiple={multiple}
        hidden
        aria-label={what}
        onChange={(e) => {
          const files = [...(e.currentTarget.files ?? [])];
          e.currentTarget.value = '';
          if (files.length > 0) onPick(files);
        }}
      />
      <button type="button" onClick={() => input.current?.click()}>
        {children}
      </button>
    </>
  );
}
