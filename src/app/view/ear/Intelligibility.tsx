import { useMemo } from 'preact/hooks';
import { drawShares } from '#draw';
import type { EarCurves } from '#jobs';
import { Plot } from '../parts/Plot.tsx';

const TITLE = 'What each band gives to being understood';

/** The speech intelligibility index, and what each band adds to it of what it could. */
export function Intelligibility({ curves, width }: { readonly curves: EarCurves; readonly width: number }) {
  const { band, siiShare, siiMost, sii } = curves;
  const drawn = useMemo(() => {
    const shares = { band, share: siiShare, most: siiMost };
    const svg = drawShares(shares, { title: TITLE, whole: 'intelligibility index', width, theme: 'host', id: 'shares-plot' });
    const series = (label: string, values: ArrayLike<number>) => ({ label, points: band.map((x, i) => ({ x, y: 100 * values[i]! })) });
    return {
      svg,
      curves: {
        series: [series('gives', siiShare), series('could give', siiMost)],
        x: { label: 'frequency', unit: 'Hz' },
        y: { label: 'share of the index', unit: '%' },
      },
    };
  }, [band, siiShare, siiMost, width]);
  return (
    <>
      <p aria-live="polite">
        Speech intelligibility index <strong class="sii">{sii.toFixed(2)}</strong> of 1
      </p>
      <Plot svg={drawn.svg} name={TITLE} curves={drawn.curves} />
    </>
  );
}
