import type { StationField } from '#jobs';
import { formatFigure } from '#units';

/** How the field of a station came about: from what would arrive through nothing but air, step by step, in dB. */
export function Steps({ station: { name, steps, method, spread } }: { readonly station: StationField }) {
  const [free, ...rest] = steps;
  if (!free) return null;
  const end = steps.reduce((sum, s) => sum + s.decibels, 0);
  return (
    <div aria-live="polite">
      <h3>How the field of {name} comes about</h3>
      <table class="figures">
        <caption class="visually-hidden">Steps from the mast to the aerial, {name}</caption>
        <thead>
          <tr>
            <th scope="col">step</th>
            <th scope="col">dB</th>
            <th scope="col">by</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{free.label}</th>
            <td class="value">{formatFigure(free.decibels, 'dBµV/m')}</td>
            <td class="about">{free.source}</td>
          </tr>
          {rest.map((s) => (
            <tr key={s.label}>
              <th scope="row">{s.label}</th>
              <td class="value">{changeText(s.decibels)}</td>
              <td class="about">{s.source}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">at your aerial</th>
            <td class="value">{formatFigure(end, 'dBµV/m')}</td>
            <td class="about">
              {method.replaceAll('-', ' ')}; from place to place ±{spread.toFixed(1)} dB
            </td>
          </tr>
        </tbody>
      </table>
    </div>
  );
}

const changeText = (decibels: number): string => `${decibels > 0 ? '+' : ''}${formatFigure(decibels, 'dB')}`.replace('-', '−');
