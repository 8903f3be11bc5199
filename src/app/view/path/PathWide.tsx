import type { ComponentChildren } from 'preact';
import type { Fall } from './fall.ts';
import { AERIALS, type AerialLook, CHANNEL, EAR, EARPIECE, HOUSE, JUNCTION, MAST, WAVES, windings } from './pictograms.ts';
import { type Column, waterLine, wideShape } from './wide-shape.ts';

/** How the set looks, for its drawings on the wire. */
export interface Looks {
  readonly aerial: AerialLook;
  readonly turns: number;
  readonly detector: 'junction' | 'channel';
}

interface Props {
  readonly fall: Fall;
  readonly looks: Looks;
  readonly width: number;
  readonly height: number;
  /** what hides the sound at its end: `over the room's noise` */
  readonly margin: string;
}

/** The path from mast to ear across the page: one wire that sinks by what each stage takes, above the surface of silence. */
export function PathWide({ fall, looks, width, height, margin }: Props) {
  const shape = wideShape(fall, width, height);
  const { columns, silence } = shape;
  const reached = fall.left !== null;
  return (
    <svg class="path-picture" width={width} height={height} viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
      <path class="water" d={`${waterLine(silence, width)}V${height}H0Z`} />
      <path class="water-line" d={waterLine(silence, width)} />
      <text class="water-name" x={14} y={Math.min(height - 10, silence + 22)}>
        silence: what hearing and the room hide
      </text>
      {columns.map((c, k) => (
        <Stage key={c.post.stage} column={c} next={columns[k + 1]} looks={looks} broken={!reached} />
      ))}
      {reached && <Margin column={columns.at(-1)!} silence={silence} left={fall.left} words={margin} />}
    </svg>
  );
}

function Stage({ column: c, next, looks, broken }: { column: Column; next: Column | undefined; looks: Looks; broken: boolean }) {
  const { stage, level } = c.post;
  const wired = stage !== 'place';
  const until = stage === 'ear' ? c.middle - 20 : (next?.stairs[0]?.x ?? next?.left ?? c.right);
  return (
    <g class={`stage stage-${stage}${broken && wired && stage !== 'aerial' ? ' broken' : ''}`}>
      {c.stairs.map(({ drop, x, from, to }, i) => (
        <g key={drop.step.label} class={drop.step.costliest ? 'drop costliest' : 'drop'}>
          <path class="wire" d={`M${x},${from}V${to}H${c.stairs[i + 1]?.x ?? c.from}`} />
          {drop.step.costliest && <path class="drop-mark" d={`M${x},${from}V${to}`} />}
          <text x={x + 7} y={Math.min((from + to) / 2 + 4, Math.max(from, to) - 5)}>
            {drop.to >= drop.from ? '−' : '+'}
            {Math.abs(drop.to - drop.from).toFixed(1)} dB
          </text>
        </g>
      ))}
      {wired && <Own column={c} until={until} looks={looks} />}
      {stage === 'place' && (
        <g class="pictogram" transform={`translate(${c.left + Math.min(54, (c.right - c.left) * 0.3)},${c.y})`}>
          <path d={MAST} />
          <path class="waves" d={WAVES} />
          <path class="waves far" d="M62,-74a40,40 0 0 1 0,52M84,-78a50,50 0 0 1 0,60" />
        </g>
      )}
      {level !== null && (
        <LevelText
          x={stage === 'place' ? c.left + 14 : stage === 'ear' ? c.right - 22 : c.middle}
          y={c.y}
          level={stage === 'ear' ? `intelligibility ${level}` : level}
          anchor={stage === 'place' ? 'start' : stage === 'ear' ? 'end' : 'middle'}
        />
      )}
    </g>
  );
}

/** The wire through a stage, with what the stage makes of it. */
function Own({ column: c, until, looks }: { column: Column; until: number; looks: Looks }) {
  const { stage } = c.post;
  const [m, y] = [c.middle, c.y];
  const at = (children: ComponentChildren) => (
    <g class="pictogram" transform={`translate(${m},${y})`}>
      {children}
    </g>
  );
  switch (stage) {
    case 'aerial':
      return (
        <>
          <path class="wire" d={`M${m},${y}H${until}`} />
          {at(<path class="wire" d={AERIALS[looks.aerial]} />)}
        </>
      );
    case 'tank': {
      const half = Math.min(46, (c.right - c.from) / 2 - 6);
      return <path class="wire" d={`M${c.from},${y}${windings(m - half, m + half, y, looks.turns)}H${until}`} />;
    }
    case 'detector':
      return (
        <>
          <path class="wire" d={`M${c.from},${y}H${until}`} />
          {at(<path class="solid" d={looks.detector === 'junction' ? JUNCTION : CHANNEL} />)}
        </>
      );
    case 'phones':
      return (
        <>
          <path class="wire" d={`M${c.from},${y}H${until}`} />
          {at(<path d={EARPIECE} />)}
        </>
      );
    case 'ear':
      return (
        <>
          <path class="wire" d={`M${c.from},${y}H${until}`} />
          <path class="waves" d={`M${until + 2},${y - 10}a14,14 0 0 1 0,20`} />
          {at(<path d={EAR} />)}
        </>
      );
    default:
      return at(<path d={HOUSE} />);
  }
}

/** `6.38 µW (-22.0 dBm)`: the first large, the second small below it. */
function LevelText({ x, y, level, anchor }: { x: number; y: number; level: string; anchor: 'start' | 'middle' | 'end' }) {
  const [main, ...more] = level.split(' (');
  return (
    <text class="level" x={x} y={y + 26} text-anchor={anchor}>
      <tspan class="level-main">{main}</tspan>
      {more.length > 0 && (
        <tspan class="level-more" x={x} dy="16">
          {more.join(' (').replace(/\)$/, '')}
        </tspan>
      )}
    </text>
  );
}

/** How far above silence the wire ends, or how far under it. */
function Margin({ column: c, silence, left, words }: { column: Column; silence: number; left: number | null; words: string }) {
  const x = c.right - 12;
  const above = (left ?? 0) >= 0;
  return (
    <g class={above ? 'margin' : 'margin under'}>
      <path d={`M${x},${c.y}V${silence}M${x - 4},${c.y}H${x + 4}M${x - 4},${silence}H${x + 4}`} />
      <text x={x - 8} y={above ? silence - 8 : silence + 20} text-anchor="end">
        {Math.abs(left ?? 0).toFixed(0)} dB {above ? words : 'under silence'}
      </text>
    </g>
  );
}
