import type { SlopeCurves } from '#jobs';
import { Handle } from './Handle.tsx';
import { gripsOf, type Shape } from './shape.ts';
import type { Trial } from './trial.ts';

interface Props {
  readonly curves: SlopeCurves;
  readonly shape: Shape;
  readonly trial: Trial;
}

/** Least distance over which a handle is pulled [px]: nearer, a dot more or less would be twice as much or half. */
const NEAREST = 12;
/** How much faster the losses go than the shoulder is pulled: aerial and detector widen the slope too, and these stay. */
const PULL = 1.5;

/** What can be taken hold of: the top of the slope tunes, its shoulder changes Q, the end of the swing the deviation. */
export function Handles({ curves, shape, trial }: Props) {
  const { offset, amplitude, rated, run, angle, modulation } = curves;
  const { top, shoulder } = gripsOf(curves);
  const perHertz = shape.x(1) - shape.x(0);
  const spot = (i: number) => ({ x: shape.x(offset[i]!), y: shape.y(amplitude[i]!) });
  const [atTop, atShoulder] = [spot(top), spot(shoulder)];
  const fm = curves.kind === 'fm';
  const reach = fm ? shape.x(rated.swing) - shape.x(0) : shape.y(curves.rest) - shape.y(rated.most);
  const pulled = (from: number, by: number): number => Math.max(1, from + by) / from;
  const away = atShoulder.x >= atTop.x ? 1 : -1;
  const width = Math.max(NEAREST, Math.abs(atShoulder.x - atTop.x));
  return (
    <>
      {run !== null && run !== 0 && (
        <Handle
          name="tuning"
          way="across"
          at={atTop}
          onHold={() =>
            ({ x }) =>
              trial.tune(angle + x / perHertz / run)
            }
        />
      )}
      {shoulder !== top && (
        <Handle
          name="losses"
          way="across"
          at={atShoulder}
          onHold={() => {
            const from = trial.losses;
            return ({ x }) => trial.lose(from * pulled(width, away * x) ** PULL);
          }}
        />
      )}
      <Handle
        name="modulation"
        way={fm ? 'across' : 'upright'}
        at={fm ? { x: shape.x(rated.swing), y: shape.down(1) } : { x: shape.across(1), y: shape.y(rated.most) }}
        onHold={() =>
          ({ x, y }) =>
            trial.modulate(modulation * pulled(Math.max(NEAREST, reach), fm ? x : -y))
          }
      />
    </>
  );
}
