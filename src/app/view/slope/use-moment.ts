import { useEffect, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { PERIODS } from './shape.ts';

/** One swing takes so long on the page [ms]: slow enough to follow with the eye. */
const PERIOD = 3200;

/** The moment of the swing that is pointed at, moving by itself unless it is held or motion is not wanted. */
export interface Moment {
  readonly moving: boolean;
  /** where it was held [periods] */
  readonly held: number;
  readonly go: () => void;
  /** holds it, where it is or elsewhere */
  readonly hold: (at?: number) => void;
}

/** @param show - puts the pointers where they belong at a time [periods]; called for every frame, past the page's own drawing */
export function useMoment(show: (time: number) => void): Moment {
  const [moving, setMoving] = useState(() => !matchMedia('(prefers-reduced-motion: reduce)').matches);
  const [held, setHeld] = useState(0.1);
  const time = useRef(held);
  const frame = useRef(0);
  const latest = useRef(show);
  latest.current = show;
  // what was drawn anew gets its pointers back at once
  useLayoutEffect(() => show(time.current));
  useEffect(() => {
    if (!moving) return;
    let before = performance.now();
    const step = (now: number): void => {
      time.current = (time.current + Math.max(0, now - before) / PERIOD) % PERIODS;
      before = now;
      latest.current(time.current);
      frame.current = requestAnimationFrame(step);
    };
    frame.current = requestAnimationFrame(step);
    return () => cancelAnimationFrame(frame.current);
  }, [moving]);
  return {
    moving,
    held,
    go: () => setMoving(true),
    hold: (at = time.current) => {
      // at once: until the page is drawn anew it would move on
      cancelAnimationFrame(frame.current);
      time.current = at;
      setMoving(false);
      setHeld(at);
    },
  };
}
