import type { SlopeCurves } from '#jobs';
import { formatFigure } from '#units';
import { LOSSES, modulationEnds, type Trial } from './trial.ts';
import { tunedWords } from './words.ts';

const DEGREE = Math.PI / 180;
const PARTS = 400;
/** Steps of the losses from one doubling to the next. */
const OCTAVE = 20;

interface Props {
  readonly curves: SlopeCurves;
  readonly trial: Trial;
}

/** The same as the handles of the picture, as sliders: dial, deviation or depth, losses. */
export function Controls({ curves, trial }: Props) {
  const { angle, around, humps, kind, modulation, rotation, sharpness } = curves;
  const { least, most } = modulationEnds(curves);
  const [from, to] = [around[0]?.angle ?? 0, around.at(-1)?.angle ?? rotation];
  const middle = around.reduce<(typeof around)[number] | null>((best, p) => (best && Math.abs(best.x) <= Math.abs(p.x) ? best : p), null);
  const written = kind === 'fm' ? formatFigure(modulation, 'Hz', 3) : `${(100 * modulation).toFixed(0)} %`;
  const name = kind === 'fm' ? 'deviation' : 'depth';
  return (
    <div class="slope-controls">
      <div class="field">
        <label for="slope-dial">dial</label>
        <input
          id="slope-dial"
          type="range"
          min={from}
          max={to}
          step={(to - from) / PARTS}
          value={trial.angle}
          aria-valuetext={`${formatFigure(angle, 'rad')}, tank ${tunedWords(curves)} the carrier`}
          onInput={(e) => trial.tune(Number(e.currentTarget.value))}
        />
        <p class="about">
          {(angle / DEGREE).toFixed(2)}°: the tank is tuned {tunedWords(curves)} the carrier. This is the dial of your set.
        </p>
      </div>
      <fieldset class="tools" aria-label="dial to a side of the station">
        {humps.map((h) => (
          <button key={h.side} type="button" onClick={() => trial.tune(h.angle)}>
            {kind === 'am' ? 'loudest' : `loudest, tank ${h.side} the carrier`}
          </button>
        ))}
        {middle && (
          <button type="button" onClick={() => trial.tune(middle.angle)}>
            onto the carrier
          </button>
        )}
      </fieldset>
      <div class="field">
        <label for="slope-modulation">{name}</label>
        <input
          id="slope-modulation"
          type="range"
          min={least}
          max={most}
          step={kind === 'fm' ? 1e3 : 0.01}
          value={trial.modulation}
          aria-valuetext={written}
          onInput={(e) => trial.modulate(Number(e.currentTarget.value))}
        />
        <p class="about">{written}. What if the station were modulated by so much? It is only tried here.</p>
      </div>
      <div class="field">
        <label for="slope-losses">losses of the tank</label>
        <input
          id="slope-losses"
          type="range"
          min={OCTAVE * Math.log2(LOSSES.least)}
          max={OCTAVE * Math.log2(LOSSES.most)}
          step={1}
          value={Math.round(OCTAVE * Math.log2(trial.losses))}
          aria-valuetext={`${formatFigure(trial.losses, '1', 2)} times, loaded Q ${formatFigure(sharpness?.loadedQ ?? null, '1', 3)}`}
          onInput={(e) => trial.lose(2 ** (Number(e.currentTarget.value) / OCTAVE))}
        />
        <p class="about">
          {formatFigure(trial.losses, '1', 2)} times what they are; loaded Q {formatFigure(sharpness?.loadedQ ?? null, '1', 3)}. What if
          copper, joints, contacts and insulation lost so many times as much? Dull joints and tarnish raise it; the best metal takes it
          little below 1. Less is only for the eye. Aerial and detector take their share as before.
        </p>
      </div>
      {trial.supposed && (
        <button type="button" onClick={trial.leave}>
          back to the set as it is
        </button>
      )}
    </div>
  );
}
