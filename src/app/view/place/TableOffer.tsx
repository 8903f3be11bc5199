import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { StationChange } from '#set-file';
import type { Desk } from '../../model/desk.ts';
import type { GivenText } from '../../model/open-files.ts';
import { offerStations, takeStations } from '../../model/own-place.ts';
import { Problems } from '../parts/Problems.tsx';

export interface GivenTable {
  readonly name: string;
  readonly text: GivenText;
}

interface Props {
  readonly desk: Desk;
  readonly given: GivenTable;
  readonly onClose: () => void;
}

/** What a table of stations would change, or why it cannot be taken; nothing is done until the person says so. */
export function TableOffer({ desk, given: { name, text }, onClose }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [others, setOthers] = useState<'keep' | 'take out'>('keep');
  useEffect(() => dialog.current?.showModal(), []);
  const offer = useMemo(() => (text.ok ? offerStations(desk, name, text.value, others) : null), [desk, name, text, others]);
  const take = (): void => {
    if (offer?.ok) takeStations(desk, offer.put);
    dialog.current?.close();
  };
  const changes = offer?.ok ? offer.put.changes.filter((c) => c.kind !== 'as it was') : [];
  return (
    <dialog ref={dialog} aria-labelledby="offer-title" onClose={onClose}>
      <h2 id="offer-title">{offer?.ok ? `Stations from ${name}` : `${name} cannot be taken`}</h2>
      {!text.ok && <p>{text.why}. Your stations are as they were.</p>}
      {offer && !offer.ok && (
        <>
          <p>Your stations are as they were. This stands in the way:</p>
          <Problems problems={offer.problems} />
        </>
      )}
      {offer?.ok && (
        <>
          <Changes changes={changes} />
          {offer.table.ignored.length > 0 && (
            <p class="about">Not taken, for a station has no such thing: {offer.table.ignored.join(', ')}.</p>
          )}
          <label class="check">
            <input
              type="checkbox"
              checked={others === 'take out'}
              onChange={(e) => setOthers(e.currentTarget.checked ? 'take out' : 'keep')}
            />
            take out stations that the table does not name
          </label>
        </>
      )}
      <p class="tools">
        {changes.length > 0 && (
          <button type="button" class="main" onClick={take}>
            Take them
          </button>
        )}
        <button type="button" onClick={() => dialog.current?.close()}>
          Leave it as it is
        </button>
      </p>
    </dialog>
  );
}

function Changes({ changes }: { readonly changes: readonly StationChange[] }) {
  if (changes.length === 0) return <p>Nothing would change: the table says what your stations say already.</p>;
  return (
    <ul aria-label="what would change">
      {changes.map(({ name, kind, cells }) => (
        <li key={name}>
          <strong>{name}</strong>: {kind}
          {kind === 'changed' && ` (${cells.map((c) => `${c.head}: ${c.before || 'nothing'} becomes ${c.after || 'nothing'}`).join('; ')})`}
          {kind === 'new' &&
            ` (${cells
              .filter((c) => c.head !== 'name')
              .map((c) => `${c.head} ${c.after}`)
              .join(', ')})`}
        </li>
      ))}
    </ul>
  );
}
