import { useEffect } from 'preact/hooks';
import type { Desk } from '../../model/desk.ts';
import type { Listening } from '../../model/listening.ts';

/** The set on the bench beside one put aside: both play, one is heard; at their true levels, or the other made as loud by a gain that is stated. */
export function TwoSets({ desk, listening }: { readonly desk: Desk; readonly listening: Listening }) {
  const { shelf, bench } = desk;
  const { pair } = listening;
  const sets = shelf.sets.value;
  useEffect(() => void shelf.work(), [shelf, sets]);
  const station = bench.shown.value;
  const choose = (name: string): void => {
    const set = sets.find((s) => s.name === name);
    pair.other.value = set && station ? { set, station: shelf.station(set, station.name) } : null;
  };
  const other = pair.other.value;
  return (
    <section aria-label="two sets">
      <h2>two sets by ear</h2>
      {sets.length === 0 ? (
        <p class="about">Put a set aside in the view "compare", change the one on the bench, and hear the two here in turn.</p>
      ) : (
        <>
          <label>
            beside the set on the bench{' '}
            <select value={other?.set.name ?? ''} onChange={(e) => choose(e.currentTarget.value)}>
              <option value="">no other</option>
              {sets.map((s) => (
                <option key={s.name} value={s.name}>
                  {s.name}
                </option>
              ))}
            </select>
          </label>
          {other && !other.station?.angle && <p class="complaint">That set does not hear this station.</p>}
          {other?.station?.angle != null && (
            <div class="tools">
              <button type="button" aria-pressed={!pair.hearsOther.value} onClick={() => pair.hear(false)}>
                hear: on the bench
              </button>
              <button type="button" aria-pressed={pair.hearsOther.value} onClick={() => pair.hear(true)}>
                hear: {other.set.name}
              </button>
              <label class="check">
                <input
                  type="checkbox"
                  checked={pair.matched.value}
                  onChange={(e) => {
                    pair.matched.value = e.currentTarget.checked;
                  }}
                />
                made as loud as the one on the bench
              </label>
            </div>
          )}
          {other?.station?.angle != null && (
            <p aria-live="polite">
              {pair.matched.value
                ? `${other.set.name} is played ${pair.matchGain.value.toFixed(1)} dB louder than it is, to match.`
                : 'Both at their true level: what is louder is louder.'}
            </p>
          )}
        </>
      )}
    </section>
  );
}
