import type { FoundSet } from '#jobs';
import { pointsText } from '#tell';
import type { Desk } from '../../model/desk.ts';
import { findingOf } from '../../model/find/finding.ts';
import type { SearchRun } from '../../model/find/search-run.ts';

interface Props {
  readonly desk: Desk;
  readonly run: SearchRun;
  readonly set: FoundSet;
  readonly name: string;
  /** by which the picture of the front shows it */
  readonly mark: string;
}

/** One set that was found: how it is heard, what it is made of, what speaks for it, and what to do with it. */
export function Card({ desk, run, set, name, mark }: Props) {
  const finding = findingOf(desk);
  const [first, ...others] = set.stations;
  const picked = run.picked.value.has(set.key);
  return (
    <li class="card">
      <article aria-label={name}>
        <h3>
          <span class="card-mark">{mark}</span> {pointsText(set.worth)}
        </h3>
        <p class={`card-sentence ${first?.outcome ?? ''}`}>{first?.sentence}</p>
        <dl class="card-words">
          {set.words.map((line) => {
            const [stage, words] = split(line);
            return (
              <div key={stage}>
                <dt>{stage}</dt>
                <dd>{words}</dd>
              </div>
            );
          })}
        </dl>
        {set.better.length > 0 && <p>Better than the next: {set.better.join(', ')}.</p>}
        <Odds run={run} set={set} />
        {others.length > 0 && (
          <details class="others">
            <summary>the other stations</summary>
            {others.map((s) => (
              <p key={s.name}>{s.sentence}</p>
            ))}
          </details>
        )}
        {set.cautions.length > 0 && (
          <details class="others">
            <summary>cautions: {set.cautions.length}</summary>
            {set.cautions.map((c) => (
              <p key={c}>{c}</p>
            ))}
          </details>
        )}
        <p class="tools">
          <button type="button" class="main" aria-label={`put ${name} on the bench`} onClick={() => void finding.putOnBench(set, name)}>
            put it on the bench
          </button>
          <button type="button" aria-label={`put ${name} aside`} onClick={() => void finding.putAside(set, name)}>
            put it aside
          </button>
          <button
            type="button"
            aria-label={`build sheet of ${name}`}
            onClick={() =>
              void finding.putOnBench(set, name).then(() => {
                desk.bench.view.value = 'sheet';
              })
            }
          >
            sheet
          </button>
          {picked && (
            <button type="button" aria-label={`take ${name} away`} onClick={() => run.drop(set.key)}>
              take away
            </button>
          )}
        </p>
      </article>
    </li>
  );
}

/** `aerial: a rod of 75 cm` in two. */
function split(line: string): readonly [string, string] {
  const at = line.indexOf(': ');
  return [line.slice(0, at), line.slice(at + 2)];
}

/** How the set does as it comes from the hand: worked out when the search rests, or when asked for. */
function Odds({ run, set }: { readonly run: SearchRun; readonly set: FoundSet }) {
  const odds = run.odds.value.get(set.key);
  if (odds === undefined)
    return (
      <p>
        <button type="button" aria-label="how it does as built by hand" onClick={() => void run.workOdds(set)}>
          how does it do as built by hand?
        </button>
      </p>
    );
  if (typeof odds === 'number')
    return (
      <p>
        building it on paper, over and over <progress value={odds} max={1} aria-label="odds as built" />
      </p>
    );
  return (
    <p>
      {odds.sentence} <small>(as {odds.samples} of them came out on paper)</small>
    </p>
  );
}
