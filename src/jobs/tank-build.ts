import { type TankDescription, tunedTo } from '#engine';
import type { JobContext } from '#rpc';
import { onBench } from './bench.ts';
import type { Answer, Document } from './document.ts';

/** A tank as it is to be built: its parts, and the dial to put in front of it. */
export interface TankBuild {
  readonly tank: TankDescription;
  readonly dial: {
    /** from least to greatest capacitance [rad] */
    readonly rotation: number;
    /** the whole set, aerial and detector joined: ascending angle [rad] and what is tuned to there [Hz], null where nothing is */
    readonly points: readonly { readonly angle: number; readonly frequency: number | null }[];
    /** where each station of the place is heard best, loudest first */
    readonly stations: readonly {
      readonly label: string;
      readonly frequency: number;
      readonly points: readonly { readonly angle: number }[];
    }[];
  };
}

/** Every five degrees of a half circle: between them the dial runs straight enough for a drawn scale. */
const POINTS = 37;

export function tankBuild({ document }: { readonly document: Document }, context: JobContext): Promise<Answer<TankBuild>> {
  return onBench(document, async (bench) => {
    const { receiver, signals } = bench.reception;
    const { rotation } = receiver.tank;
    const points: { angle: number; frequency: number | null }[] = [];
    for (let i = 0; i < POINTS; i++) {
      await context.step(i / POINTS);
      const angle = (rotation * i) / (POINTS - 1);
      points.push({ angle, frequency: signals[0] ? tunedTo(receiver, signals[0].arrival, angle) : null });
    }
    const stations = signals.map(({ received: { station } }, k) => {
      const dial = bench.dial(k);
      return {
        label: station.name,
        frequency: station.frequency,
        points: 'missing' in dial ? [] : dial.points.map(({ angle }) => ({ angle })),
      };
    });
    return { tank: bench.situation.set.tank, dial: { rotation, points, stations } };
  });
}
