import type { Desk } from '../../model/desk.ts';
import { pointWords } from '../../model/find/asked.ts';
import type { SearchRun } from '../../model/find/search-run.ts';
import { Card } from './Card.tsx';

interface Props {
  readonly desk: Desk;
  readonly run: SearchRun;
}

/** The best different sets. */
export function Best({ desk, run }: Props) {
  const sets = run.answer.value?.sets ?? [];
  if (sets.length === 0) return null;
  return (
    <section aria-labelledby="found-heading">
      <h2 id="found-heading">{sets.length === 1 ? 'The best set' : 'The best sets, each a different one'}</h2>
      <p class="about">{pointWords(run.asked.aim)}</p>
      <ol class="cards">
        {sets.map((set, k) => (
          <Card key={set.key} desk={desk} run={run} set={set} name={`Found ${k + 1}`} mark={`${k + 1}`} />
        ))}
      </ol>
    </section>
  );
}

/** Sets picked from the picture of what can be had. */
export function Picked({ desk, run }: Props) {
  const sets = run.answer.value?.sets ?? [];
  const picked = [...run.picked.value.values()].filter((p) => !sets.some((s) => s.key === p.key));
  if (picked.length === 0) return null;
  return (
    <section aria-labelledby="picked-heading" aria-live="polite">
      <h2 id="picked-heading">Picked from the picture</h2>
      <ol class="cards">
        {picked.map((set, k) => (
          <Card key={set.key} desk={desk} run={run} set={set} name={`Picked ${letterOf(k)}`} mark={letterOf(k)} />
        ))}
      </ol>
    </section>
  );
}

/** Names of picked sets: letters, since numbers are for the best. */
const letterOf = (k: number): string => String.fromCharCode(97 + (k % 26)) + (k < 26 ? '' : Math.floor(k / 26));
