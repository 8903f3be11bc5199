import { type Fall, type Post, scaleOf } from './fall.ts';

interface Props {
  readonly fall: Fall;
  readonly rowHeight: number;
  readonly width: number;
  readonly height: number;
}

/** Room for the wire's line at either side [px]. */
const SIDE = 10;

/** The wire down the side of a narrow page: stages from top to bottom, decibels to the right, silence at the right edge. */
export function PathNarrow({ fall, rowHeight, width, height }: Props) {
  const { top, bottom, silence } = scaleOf(fall);
  const x = (lost: number): number => SIDE + ((lost - top) / (bottom - top)) * (width - 2 * SIDE);
  const edge = x(silence);
  return (
    <svg class="path-picture" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <path class="water" d={`M${edge},0V${height}H${width}V0Z`} />
      <path class="water-line" d={`M${edge},0V${height}`} />
      {fall.posts.map((post, k) => (
        <Row key={post.stage} post={post} y={k * rowHeight} rowHeight={rowHeight} x={x} last={k === fall.posts.length - 1} />
      ))}
    </svg>
  );
}

function Row(props: { post: Post; y: number; rowHeight: number; x: (lost: number) => number; last: boolean }) {
  const { post, y, rowHeight, x, last } = props;
  if (post.stage === 'place') return <path class="waves" d={`M${x(0)},${y + 14}v6m0,6v6m0,6v6m0,6v6m0,6v6`} />;
  const each = (rowHeight * 0.55) / Math.max(1, post.drops.length);
  const start = post.drops[0]?.from ?? post.lost;
  const d = post.drops.map((drop, i) => `V${y + 8 + i * each}H${x(drop.to)}`).join('');
  return (
    <g>
      <path class="wire" d={`M${x(start)},${y}${d}V${last ? y + rowHeight / 2 : y + rowHeight}`} />
      {post.drops.map((drop, i) =>
        drop.step.costliest ? (
          <path key={drop.step.label} class="drop-mark" d={`M${x(drop.from)},${y + 8 + i * each}H${x(drop.to)}`} />
        ) : null,
      )}
      {last && <circle class="wire-end" cx={x(post.lost)} cy={y + rowHeight / 2} r={5} />}
    </g>
  );
}
