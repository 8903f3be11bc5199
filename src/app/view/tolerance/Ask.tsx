import type { ManyHands } from '../../model/tolerance/many-hands.ts';

const LARGEST_SEED = 2 ** 32 - 1;

/** Which station counts, and where chance begins; each change begins anew. */
export function Ask({ hands }: { readonly hands: ManyHands }) {
  const best = hands.run.value?.plan.value;
  const stations = hands.stations();
  return (
    <form
      class="editor"
      aria-label="what it is judged by"
      onSubmit={(e) => {
        e.preventDefault();
        void hands.start();
      }}
    >
      <div class="field">
        <label for="hands-station">judged by station</label>
        <select
          id="hands-station"
          value={hands.station.value ?? ''}
          onChange={(e) => {
            hands.station.value = e.currentTarget.value === '' ? null : e.currentTarget.value;
            void hands.start();
          }}
        >
          <option value="">heard best{hands.station.value === null && best ? `: ${best.name}` : ''}</option>
          {stations.map((name) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <div class="field">
        <label for="hands-seed">seed</label>
        <input
          id="hands-seed"
          type="number"
          min={0}
          max={LARGEST_SEED}
          step={1}
          value={hands.seed.value}
          aria-describedby="hands-seed-about"
          onChange={(e) => {
            const seed = Number(e.currentTarget.value);
            if (e.currentTarget.value !== '' && Number.isInteger(seed) && seed >= 0 && seed <= LARGEST_SEED) hands.seed.value = seed;
            else e.currentTarget.value = String(hands.seed.value);
          }}
        />
        <p class="about" id="hands-seed-about">
          The same seed makes the same errors again; another seed makes others, and should tell nearly the same.
        </p>
      </div>
      <p class="tools">
        <button type="submit" class={hands.outdated.value ? 'main' : ''}>
          start anew
        </button>
      </p>
    </form>
  );
}
