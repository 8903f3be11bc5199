import { AIMS, type Asked, aimOf, bandOf, type Shares } from '../../model/find/asked.ts';
import type { Finding } from '../../model/find/finding.ts';

const TIMES: readonly (readonly [number, string])[] = [
  [10, '10 seconds'],
  [30, 'half a minute'],
  [120, '2 minutes'],
  [600, '10 minutes'],
];
const MIXED: readonly (readonly [keyof Shares, string])[] = [
  ['speech', 'words understood'],
  ['loudness', 'loudness'],
  ['clean', 'little distortion'],
  ['stations', 'many stations'],
];
const LARGEST_SEED = 2 ** 32 - 1;

/** What is looked for, and for how long. */
export function Ask({ finding }: { readonly finding: Finding }) {
  const asked = finding.asked.value;
  const running = finding.run.value?.standing.value === 'running';
  const set = (change: Partial<Asked>): void => finding.ask(change);
  return (
    <form
      class="editor"
      aria-label="what to look for"
      onSubmit={(e) => {
        e.preventDefault();
        void finding.start();
      }}
    >
      <fieldset>
        <legend>what matters most</legend>
        {AIMS.map(([aim, words]) => (
          <label key={aim} class="check">
            <input type="radio" name="aim" checked={asked.aim === aim} onChange={() => set({ aim })} />
            {words}
          </label>
        ))}
        {asked.aim === 'mix' && <Mix asked={asked} onSet={set} />}
      </fieldset>
      <Stations finding={finding} />
      <Band asked={asked} onSet={set} />
      <div class="field">
        <label for="find-time">look for</label>
        <select id="find-time" value={asked.seconds} onChange={(e) => set({ seconds: Number(e.currentTarget.value) })}>
          {TIMES.map(([seconds, words]) => (
            <option key={seconds} value={seconds}>
              {words}
            </option>
          ))}
        </select>
      </div>
      <div class="field">
        <label for="find-seed">seed</label>
        <input
          id="find-seed"
          type="number"
          min={0}
          max={LARGEST_SEED}
          step={1}
          value={asked.seed}
          aria-describedby="find-seed-about"
          onChange={(e) => {
            const seed = Number(e.currentTarget.value);
            if (Number.isInteger(seed) && seed >= 0 && seed <= LARGEST_SEED) set({ seed });
            else e.currentTarget.value = String(asked.seed);
          }}
        />
        <p class="about" id="find-seed-about">
          The same seed goes the same way on this machine; another seed begins elsewhere and may find something else.
        </p>
      </div>
      <p class="tools">
        <button type="submit" class="main" disabled={aimOf(asked) === null || !bandOf(asked).ok}>
          {running ? 'start anew' : 'start'}
        </button>
      </p>
    </form>
  );
}

function Mix({ asked, onSet }: { readonly asked: Asked; readonly onSet: (change: Partial<Asked>) => void }) {
  return (
    <>
      {MIXED.map(([aim, words]) => (
        <label key={aim} class="mixed">
          {words}
          <input
            type="range"
            min={0}
            max={1}
            step={0.05}
            value={asked.mix[aim]}
            aria-valuetext={`${Math.round(100 * asked.mix[aim])} of 100`}
            onInput={(e) => onSet({ mix: { ...asked.mix, [aim]: Number(e.currentTarget.value) } })}
          />
        </label>
      ))}
      {aimOf(asked) === null && <p class="complaint">Give at least one of them some weight.</p>}
    </>
  );
}

/** A band that the dial must reach from end to end. */
function Band({ asked, onSet }: { readonly asked: Asked; readonly onSet: (change: Partial<Asked>) => void }) {
  const told = bandOf(asked);
  return (
    <fieldset>
      <legend>band wanted</legend>
      <p class="about" id="find-band-about">
        The dial must reach it from end to end. Left empty, it need not.
      </p>
      {(['from', 'to'] as const).map((end) => (
        <div key={end} class={told.ok ? 'field' : 'field wrong'}>
          <label for={`find-band-${end}`}>{end}</label>
          <input
            id={`find-band-${end}`}
            type="text"
            placeholder={end === 'from' ? '88 MHz' : '108 MHz'}
            value={asked.band[end]}
            aria-invalid={!told.ok}
            aria-describedby="find-band-about find-band-complaint"
            onChange={(e) => onSet({ band: { ...asked.band, [end]: e.currentTarget.value } })}
          />
        </div>
      ))}
      <p class="complaint" id="find-band-complaint" aria-live="polite">
        {told.ok ? '' : told.why}
      </p>
    </fieldset>
  );
}

/** Stations that must be on the dial. */
function Stations({ finding }: { readonly finding: Finding }) {
  const { wanted } = finding.asked.value;
  return (
    <fieldset>
      <legend>stations wanted</legend>
      <p class="about">Those ticked must all be on the dial. With none ticked, whichever is heard best counts.</p>
      {finding.stations().map(({ name, frequency }) => (
        <label key={name} class="check">
          <input
            type="checkbox"
            checked={wanted.includes(name)}
            onChange={(e) => {
              const others = wanted.filter((n) => n !== name);
              finding.ask({ wanted: e.currentTarget.checked ? [...others, name] : others });
            }}
          />
          {name}, {frequency}
        </label>
      ))}
    </fieldset>
  );
}
