import { fieldLevel } from '#engine';
import type { StationField } from '#jobs';
import { formatFigure } from '#units';

interface Props {
  readonly stations: readonly StationField[];
  readonly picked: number;
  readonly onPick: (index: number) => void;
}

/** Every station with the field it makes; the button of one picks it for the whole page. */
export function StationTable({ stations, picked, onPick }: Props) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section class="scroll" tabIndex={0} aria-label="table of stations">
      <table class="figures stations">
        <caption class="visually-hidden">Stations, where they are and how strong they arrive</caption>
        <thead>
          <tr>
            <th scope="col">station</th>
            <th scope="col">frequency</th>
            <th scope="col">away</th>
            <th scope="col">bearing</th>
            <th scope="col">field, dBµV/m</th>
            <th scope="col">likely between</th>
          </tr>
        </thead>
        <tbody>
          {stations.map((s) => (
            <tr key={s.index} class={s.index === picked ? 'picked' : undefined}>
              <th scope="row">
                <button type="button" aria-pressed={s.index === picked} onClick={() => onPick(s.index)}>
                  {s.name}
                </button>
              </th>
              <td>{formatFigure(s.frequency, 'Hz')}</td>
              <td>{formatFigure(s.distance, 'm', 3)}</td>
              <td>{formatFigure(s.bearing, 'rad')}</td>
              <td class="value">{levelText(s.field)}</td>
              <td>
                {levelText(s.low)} and {levelText(s.high)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const levelText = (field: number): string => (field > 0 ? fieldLevel(field).toFixed(1) : 'nothing');
