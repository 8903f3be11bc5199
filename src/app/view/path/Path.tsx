import { useWidth } from '../parts/use-width.ts';
import { type Fall, type Post, STAGES, type Stage } from './fall.ts';
import { PathNarrow } from './PathNarrow.tsx';
import { type Looks, PathWide } from './PathWide.tsx';
import { columnShares } from './wide-shape.ts';

interface Props {
  readonly fall: Fall;
  readonly looks: Looks;
  readonly margin: string;
  readonly open: string | null;
  readonly onOpen: (stage: Stage) => void;
}

/** Below this the path goes down the page [px]. */
const WIDE = 860;
const HEIGHT = 330;
const ROW = 76;
const GUTTER = 112;

/** From mast to ear: the picture, with a button on each stage that opens it. */
export function Path({ fall, looks, margin, open, onOpen }: Props) {
  const [box, width] = useWidth<HTMLElement>();
  const wide = width >= WIDE;
  return (
    <section class={wide ? 'path wide' : 'path narrow'} aria-label="from mast to ear" ref={box}>
      {width > 0 && (wide ? <PathWide {...{ fall, looks, margin, width }} height={HEIGHT} /> : null)}
      {width > 0 && !wide && <PathNarrow fall={fall} rowHeight={ROW} width={GUTTER} height={ROW * STAGES.length} />}
      {/* set by script, not written into the page: the policy for content allows that */}
      <ol
        style={
          wide
            ? {
                gridTemplateColumns: columnShares(fall)
                  .map((share) => `${share}fr`)
                  .join(' '),
              }
            : {}
        }
      >
        {fall.posts.map((post) => (
          <li key={post.stage}>
            <button type="button" aria-pressed={open === post.stage} onClick={() => onOpen(post.stage)}>
              <span class="stage-name">{post.stage}</span>
              <span class={wide ? 'visually-hidden' : 'stage-level'}>{post.level ?? 'nothing arrives'}</span>
              <span class={wide ? 'visually-hidden' : 'stage-cost'}>{costWords(post)}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}

function costWords({ drops }: Post): string {
  const words = drops.map(
    ({ from, to, step }) =>
      `${from > to ? 'gains' : 'takes'} ${Math.abs(to - from).toFixed(1)} dB${step.costliest ? ', the largest loss' : ''}`,
  );
  return words.join('; ');
}
