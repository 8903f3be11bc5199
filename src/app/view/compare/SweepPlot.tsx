import { useEffect, useState } from 'preact/hooks';
import { drawCurve } from '#draw';
import type { Sweep } from '#jobs';
import type { StandingNumber } from '#set-file';
import { DIMENSIONS, readQuantity, writeForPeople } from '#units';
import type { Desk } from '../../model/desk.ts';
import { inWords } from '../form/words.ts';
import { Plot } from '../parts/Plot.tsx';

const STEPS = 41;
const FIRST = 'tank.coil.turns';
const SHOWN = 'ladder.soundLevel';

/** Any number of the set over a range, with a figure over it: the whole set is worked out anew at each point, the dial set afresh. */
export function SweepPlot({ desk }: { readonly desk: Desk }) {
  const { bench } = desk;
  const document = bench.document.value;
  const [numbers, setNumbers] = useState<readonly StandingNumber[]>([]);
  const [path, setPath] = useState(FIRST);
  const [ends, setEnds] = useState<{ readonly from: string; readonly to: string } | null>(null);
  const [shown, setShown] = useState(SHOWN);
  const [result, setResult] = useState<{ readonly sweep: Sweep; readonly path: string } | null>(null);
  useEffect(() => {
    void bench.ask('numbers', 'numbers', document).then((answer) => answer?.ok && setNumbers(answer.value));
  }, [bench, document]);
  const chosen = numbers.find((n) => n.path === path) ?? numbers[0];
  const range = chosen ? (ends ?? around(chosen)) : null;
  const read = chosen && range ? [range.from, range.to].map((t) => readQuantity(plain(t), chosen.dimension)) : [];
  const wrong = read.find((r) => !r.ok);
  const [from, to] = read.map((r) => (r.ok ? r.value : Number.NaN));
  const run = (): void => {
    if (!chosen || from === undefined || to === undefined || wrong) return;
    const given = {
      document,
      station: bench.station.value,
      path: chosen.path,
      from,
      to,
      steps: STEPS,
      log: from * to > 0 && to / from > 5,
    };
    void bench.ask('sweep', 'sweep', given).then((answer) => {
      if (answer?.ok && answer.value) setResult({ sweep: answer.value, path: chosen.path });
    });
  };
  return (
    <>
      <div class="tools">
        <label>
          vary{' '}
          <select
            value={chosen?.path ?? ''}
            onChange={(e) => {
              setPath(e.currentTarget.value);
              setEnds(null);
            }}
          >
            {numbers.map((n) => (
              <option key={n.path} value={n.path}>
                {n.path.split('.').map(inWords).join(', ')} ({n.text})
              </option>
            ))}
          </select>
        </label>
        <label>
          from <input size={9} value={range?.from ?? ''} onInput={(e) => setEnds({ from: e.currentTarget.value, to: range?.to ?? '' })} />
        </label>
        <label>
          to <input size={9} value={range?.to ?? ''} onInput={(e) => setEnds({ from: range?.from ?? '', to: e.currentTarget.value })} />
        </label>
        <button type="button" class="main" disabled={wrong !== undefined || !chosen} onClick={run}>
          draw it
        </button>
      </div>
      {wrong && !wrong.ok && (
        <p class="complaint">
          {wrong.why}. {wrong.mend}
        </p>
      )}
      {result && <Drawn sweep={result.sweep} path={result.path} shown={shown} onShow={setShown} />}
    </>
  );
}

function Drawn({ sweep, path, shown, onShow }: { sweep: Sweep; path: string; shown: string; onShow: (name: string) => void }) {
  const figure = sweep.figures.find((f) => f.name === shown) ?? sweep.figures[0];
  if (!figure) return <p>The dial reaches the station at none of these values.</p>;
  const x = { label: path.split('.').map(inWords).join(', '), ...unitOf(DIMENSIONS[sweep.dimension].symbol) };
  const y = { label: figure.label, ...unitOf(figure.unit) };
  const series = [{ label: figure.label, points: sweep.points.map((p) => ({ x: p.value, y: p.figures?.[figure.name] ?? null })) }];
  const title = `${figure.label} over ${x.label}`;
  return (
    <>
      <label>
        figure{' '}
        <select value={figure.name} onChange={(e) => onShow(e.currentTarget.value)}>
          {sweep.figures.map((f) => (
            <option key={f.name} value={f.name}>
              {f.label}
            </option>
          ))}
        </select>
      </label>
      <Plot name={title} svg={drawCurve(series, { title, x, y, theme: 'host' })} curves={{ series, x, y }} />
    </>
  );
}

const unitOf = (unit: string): { readonly unit?: string } => (unit === '' || unit === '1' ? {} : { unit });
const plain = (text: string): string | number => (/^[-+]?[\d.]+$/.test(text) ? Number(text) : text);

/** Half and twice as much as it is. */
function around({ text, dimension }: StandingNumber): { readonly from: string; readonly to: string } {
  const reading = readQuantity(plain(text), dimension);
  if (!reading.ok) return { from: text, to: text };
  const write = (v: number): string => writeForPeople(v, dimension).replace('µ', 'u').replace('Ω', 'ohm');
  return { from: write(reading.value / 2), to: write(reading.value * 2) };
}
