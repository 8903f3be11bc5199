import { useRef } from 'preact/hooks';
import type { Point } from './shape.ts';

interface Props {
  readonly at: Point;
  /** where an arrow on it points: along the page or up and down */
  readonly way: 'across' | 'upright';
  readonly name: string;
  /** taken hold of: gives what a move by so much [px] comes to */
  readonly onHold: () => (moved: Point) => void;
}

/** Something in the picture that can be dragged; whoever cannot drag has a slider for the same below. */
export function Handle({ at, way, name, onHold }: Props) {
  const grip = useRef<{ readonly from: Point; readonly move: (moved: Point) => void } | null>(null);
  const arrow = way === 'across' ? 'M-15,0h-7m4,-4l-4,4l4,4M15,0h7m-4,-4l4,4l-4,4' : 'M0,-15v-7m-4,4l4,-4l4,4M0,15v7m-4,-4l4,4l4,-4';
  return (
    <g
      class={`handle ${way}`}
      transform={`translate(${at.x.toFixed(1)} ${at.y.toFixed(1)})`}
      data-handle={name}
      onPointerDown={(e) => {
        e.preventDefault();
        e.currentTarget.setPointerCapture(e.pointerId);
        grip.current = { from: { x: e.clientX, y: e.clientY }, move: onHold() };
      }}
      onPointerMove={(e) => {
        const held = grip.current;
        if (held) held.move({ x: e.clientX - held.from.x, y: e.clientY - held.from.y });
      }}
      onPointerUp={() => {
        grip.current = null;
      }}
      onPointerCancel={() => {
        grip.current = null;
      }}
    >
      <circle class="handle-reach" r={22} />
      <path d={arrow} />
      <circle class="handle-knob" r={8} />
    </g>
  );
}
