import type { ComponentChildren } from 'preact';
import { sheetWidth, useWidth } from './use-width.ts';

interface Props {
  /** makes what is shown for a sheet so wide [mm] */
  readonly children: (width: number) => ComponentChildren;
  readonly class?: string;
}

/** Room for a drawing that is made as wide as there is place, so that its text keeps its size. */
export function Sized({ children, class: name }: Props) {
  const [box, width] = useWidth<HTMLDivElement>();
  return (
    <div ref={box} class={name}>
      {width > 0 && children(sheetWidth(width))}
    </div>
  );
}
