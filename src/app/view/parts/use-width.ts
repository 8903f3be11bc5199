import { useLayoutEffect, useRef, useState } from 'preact/hooks';

/** Width of an element as it is laid out [px]; 0 until that is known. */
export function useWidth<E extends HTMLElement>() {
  const box = useRef<E>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = box.current;
    if (!element) return;
    const measure = (): void => setWidth(Math.floor(element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return [box, width] as const;
}

/** Drawings are sized in millimetres of paper; a page shows 96 dots to the inch (CSS Values 4, sec. 6.2). */
const DOTS_TO_MILLIMETRE = 96 / 25.4;

/** The sheet that fills a width of the page without being made smaller [mm], within what a drawing can be. */
export const sheetWidth = (dots: number, least = 85, most = 200): number =>
  Math.min(most, Math.max(least, Math.floor(dots / DOTS_TO_MILLIMETRE)));
