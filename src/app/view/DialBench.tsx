import type { Desk } from '../model/desk.ts';
import type { Listening } from '../model/listening.ts';
import { Dial } from './dial/Dial.tsx';
import { Transport } from './listen/Transport.tsx';

const DEGREE = Math.PI / 180;

/** The dial on one side, on the other what is heard and what would make it louder. */
export function DialBench({ desk, listening }: { readonly desk: Desk; readonly listening: Listening }) {
  const { bench } = desk;
  const shown = bench.shown.value;
  const picture = bench.dial.value;
  const stations = bench.outline.value?.stations ?? [];
  const angle = bench.hand.value ?? shown?.angle ?? null;
  const turn = (to: number): void => {
    bench.hand.value = to;
  };
  const humps = (picture?.humps[bench.station.value] ?? []).toSorted((a, b) => a - b);
  return (
    <div class="bench">
      <div>
        {!picture && <div class="dial-to-come" />}
        {picture && (
          <Dial
            rotation={picture.rotation}
            table={picture.table}
            angle={angle ?? picture.rotation / 2}
            stations={stations.map((s) => ({
              name: s.name,
              frequency: s.frequency,
              humps: picture.humps[s.index] ?? [],
              picked: s.index === bench.station.value,
            }))}
            loudness={picture.loudness}
            onTurn={turn}
            onRest={() => undefined}
          />
        )}
        <fieldset class="tools" aria-label="dial to">
          {humps.map((h) => (
            <button key={h} type="button" onClick={() => turn(h)}>
              {humps.length === 1 ? 'top' : h === humps[0] ? 'first hump' : 'second hump'} {(h / DEGREE).toFixed(1)}°
            </button>
          ))}
          <button
            type="button"
            disabled={bench.hand.value === null}
            onClick={() => {
              bench.hand.value = null;
            }}
          >
            best
          </button>
        </fieldset>
      </div>
      <div>
        <p class={`verdict ${shown?.verdict.outcome ?? ''}`} role="status" aria-label="verdict">
          {bench.sentence.value ?? 'Working it out…'}
        </p>
        <Transport sound={listening.sound} onPlay={() => void listening.play()} />
        <Next desk={desk} />
      </div>
    </div>
  );
}

/** Changes that would help, the best of each stage; each can be made at once, and taken back. */
function Next({ desk }: { readonly desk: Desk }) {
  const advice = desk.bench.advice.value;
  if (!advice) return null;
  const holds = desk.bench.adviceHolds.value;
  if (advice.bestByStage.length === 0) return <p>No single change would make this station better.</p>;
  return (
    <>
      <h2 class="next-title">What would help, best first{holds ? '' : ', to the set as it was'}</h2>
      <ul class="next">
        {advice.bestByStage.map((a) => (
          <li key={a.key}>
            <span>
              {a.words} <span class="gain">{a.gainWords}</span>
            </span>
            <button type="button" aria-label={`do it: ${a.words}`} aria-disabled={!holds} onClick={() => holds && void desk.adopt(a.key)}>
              do it
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
