import type { StationFigures } from '#jobs';
import { valueText } from '#tell';
import { differences } from '../../model/differences.ts';
import { asText, inWords } from '../form/words.ts';
import type { ViewProps } from '../view-props.ts';
import { useFigures } from './use-figures.ts';

/** What is compared, in the order of the path. */
const COMPARED = [
  'ladder.field',
  'ladder.available',
  'ladder.intoDetector',
  'tank.loadedQ',
  'tank.bandwidth',
  'ladder.audioVoltage',
  'ladder.soundLevel',
  'sound.secondHarmonic',
  'sound.thirdHarmonic',
  'sound.sinad',
  'ladder.overThreshold',
  'ladder.overNoise',
  'ladder.sii',
];

/** The set on the bench in the first column, those put aside beside it; what differs from the first is marked and told. */
export function SideBySide({ desk }: ViewProps) {
  const { bench, shelf } = desk;
  const shown = useFigures(bench);
  const sets = shelf.sets.value;
  if (sets.length === 0 || !shown) return null;
  const columns = sets.map((s) => ({ set: s, station: shelf.station(s, shown.name) }));
  const changed = differences([desk.value.value, ...sets.map((s) => s.document)]);
  const figure = (r: StationFigures | null, name: string) => r?.figures.find((f) => f.name === name) ?? null;
  const names = COMPARED.filter((name) => figure(shown, name) || columns.some((c) => figure(c.station, name)));
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section class="scroll" tabIndex={0} aria-label="sets side by side">
      <table class="figures compared">
        <thead>
          <tr>
            <th scope="col">{shown.name}</th>
            <th scope="col">on the bench</th>
            {columns.map(({ set }) => (
              <th key={set.name} scope="col">
                {set.name}{' '}
                <button type="button" aria-label={`open ${set.name}`} onClick={() => desk.open(set)}>
                  open
                </button>{' '}
                <button type="button" aria-label={`take ${set.name} away`} onClick={() => void shelf.remove(set.name)}>
                  take away
                </button>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">how it is heard</th>
            <td>{shown.verdict.outcome}</td>
            {columns.map(({ set, station }) => (
              <td key={set.name} class={station && station.verdict.outcome !== shown.verdict.outcome ? 'differs' : ''}>
                {station ? station.verdict.outcome : shelf.results.value.has(set) ? 'not at this place, or at fault' : 'working it out…'}
              </td>
            ))}
          </tr>
          {names.map((name) => {
            const own = figure(shown, name);
            return (
              <tr key={name}>
                <th scope="row">{(own ?? figure(columns.find((c) => figure(c.station, name))?.station ?? null, name))?.label}</th>
                <td>{own ? valueText(own) : ''}</td>
                {columns.map(({ set, station }) => {
                  const theirs = figure(station, name);
                  const text = theirs ? valueText(theirs) : '';
                  const differs = own !== null && theirs !== null && text !== valueText(own);
                  return (
                    <td key={set.name} class={differs ? 'differs' : ''}>
                      {text}
                    </td>
                  );
                })}
              </tr>
            );
          })}
          {changed.map(({ path, values }) => (
            <tr key={path}>
              <th scope="row">{path.split('.').map(inWords).join(', ')}</th>
              {values.map((v, k) => (
                <td key={k === 0 ? 'bench' : sets[k - 1]!.name} class={k > 0 && asText(v) !== asText(values[0]) ? 'differs' : ''}>
                  {v === undefined ? 'as usual' : asText(v)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
