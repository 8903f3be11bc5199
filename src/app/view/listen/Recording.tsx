import { useMemo, useState } from 'preact/hooks';
import { Recorder } from '../../audio/recorder.ts';
import type { Desk } from '../../model/desk.ts';
import type { Listening } from '../../model/listening.ts';
import { savedFile } from '../../model/saved-file.ts';
import { saveFile } from '../parts/save.ts';

/** The sound as a WAV file. */
export function Recording({ desk, listening }: { readonly desk: Desk; readonly listening: Listening }) {
  const recorder = useMemo(() => new Recorder(), []);
  const [seconds, setSeconds] = useState(10);
  const state = recorder.state.value;
  const play = listening.asked();
  return (
    <section aria-label="sound file">
      <h2>sound file</h2>
      <div class="tools">
        <label>
          length in seconds{' '}
          <input type="number" min={1} max={600} value={seconds} onInput={(e) => setSeconds(Number(e.currentTarget.value))} />
        </label>
        <button
          type="button"
          disabled={!play || state.kind === 'writing' || !(seconds >= 1 && seconds <= 600)}
          onClick={() => play && void recorder.start(play, seconds, desk.name.value)}
        >
          make a WAV file
        </button>
        {state.kind === 'writing' && (
          <button type="button" onClick={() => recorder.stop()}>
            call it off
          </button>
        )}
        {state.kind === 'written' && (
          <button
            type="button"
            class="main"
            onClick={() => saveFile(savedFile(desk.value.value).name.replace(/json$/, 'wav'), state.bytes, 'audio/wav')}
          >
            save the WAV file
          </button>
        )}
      </div>
      <p aria-live="polite">
        {state.kind === 'writing' && <progress value={state.done} max={1} aria-label="writing the sound file" />}
        {state.kind === 'written' && state.words}
        {state.kind === 'refused' && state.why}
      </p>
    </section>
  );
}
