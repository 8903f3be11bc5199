import type { LiveSound } from '../../audio/live-sound.ts';

/** Whether it plays, how loud it is, and what a listener must know. */
export function Transport({ sound, onPlay }: { readonly sound: LiveSound; readonly onPlay: () => void }) {
  const live = sound.live.value;
  const playing = live.kind === 'playing' || live.kind === 'starting';
  return (
    <div class="transport">
      <button type="button" class="main" onClick={() => (playing ? sound.stop() : onPlay())}>
        {playing ? 'Stop' : 'Listen'}
      </button>
      <SoundReport sound={sound} />
    </div>
  );
}

function SoundReport({ sound }: { readonly sound: LiveSound }) {
  const live = sound.live.value;
  const state = sound.state.value;
  if (live.kind === 'refused') return <p class="complaint">{live.why}</p>;
  if (live.kind === 'starting') return <p>getting ready…</p>;
  if (live.kind === 'still') return <p class="about">Begin with the volume down.</p>;
  return (
    <div class="sound-report">
      <p data-sound-level={state?.own ?? ''}>
        {state === null || state.own === null ? 'no sound yet' : `the set gives ${state.own.toFixed(1)} dB SPL`}
        {state?.loudestA == null ? '' : `, at its loudest ${state.loudestA.toFixed(1)} dB(A) with all there is to hear`}
      </p>
      {live.heard.length > 1 && <p class="about">In the sound: {live.heard.join(', ')}.</p>}
      {live.leftOut.length > 0 && <p class="about">Too far off in frequency to be followed: {live.leftOut.join(', ')}.</p>}
      {state && state.clipped > 0 && <p class="complaint">Beyond full scale: lower the make-up gain.</p>}
      {state?.loud && (
        <p class="complaint">Played at its calibration this could pass 85 dB(A): turn the volume down, and listen briefly.</p>
      )}
      {sound.missed.value > 0 && (
        <p class="complaint">This machine is too slow for all of it: leave the neighbours out, or close other programs.</p>
      )}
      {state && <p class="about">The engine takes {Math.round(100 * state.load)} % of one core.</p>}
    </div>
  );
}
