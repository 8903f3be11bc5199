import { useState } from 'preact/hooks';
import { playReferenceTone, REFERENCE_TONE } from '../../audio/reference-sound.ts';
import type { ViewProps } from '../view-props.ts';
import { Recording } from './Recording.tsx';
import { Sent } from './Sent.tsx';
import { Transport } from './Transport.tsx';
import { TwoSets } from './TwoSets.tsx';

const BESIDE = [
  ['neighbours', 'the other stations of the place (takes more of the machine)'],
  ['noise', 'noise of the aerial, the detector and the set'],
  ['room', 'noise of the room'],
  ['hearingLimit', 'the limit of hearing, as a noise that hides what the set gives too faintly'],
] as const;

/** Hearing the set: what the station sends, what is heard beside it, at which level, and beside another set. */
export function ListenView({ desk, listening }: ViewProps) {
  const { sound, makeUpGain } = listening;
  return (
    <div class="view with-form">
      <div class="editor">
        <h2>listen</h2>
        <Transport sound={sound} onPlay={() => void listening.play()} />
        {listening.notice.value && <p class="complaint">{listening.notice.value}</p>}
        <Sent listening={listening} />
        <fieldset>
          <legend>heard beside the programme</legend>
          {BESIDE.map(([key, words]) => (
            <label key={key} class="check">
              <input
                type="checkbox"
                checked={listening.with.value[key]}
                onChange={(e) => {
                  listening.with.value = { ...listening.with.value, [key]: e.currentTarget.checked };
                }}
              />
              {words}
            </label>
          ))}
        </fieldset>
        <fieldset>
          <legend>level</legend>
          <label for="make-up">make-up gain: {makeUpGain.value === 0 ? 'none, the true level' : `${makeUpGain.value} dB`}</label>
          <input
            id="make-up"
            type="range"
            min={0}
            max={50}
            step={1}
            value={makeUpGain.value}
            aria-valuetext={`${makeUpGain.value} dB`}
            onInput={(e) => {
              makeUpGain.value = Number(e.currentTarget.value);
            }}
          />
          <p class="about">
            Nothing is ever made louder than stated here. With no make-up gain, and playback set by the reference tone, you hear the set at
            its true level; leave the limit of hearing out then, since your own ear has one.
          </p>
          <Reference />
        </fieldset>
      </div>
      <div>
        <TwoSets desk={desk} listening={listening} />
        <Recording desk={desk} listening={listening} />
      </div>
    </div>
  );
}

/** The tone by which playback is set to its true level. */
function Reference() {
  const [stop, setStop] = useState<(() => void) | null>(null);
  return (
    <>
      <button
        type="button"
        onClick={() => {
          stop?.();
          const next = stop ? null : playReferenceTone();
          setStop(() => next);
        }}
      >
        {stop ? 'stop the reference tone' : `reference tone: ${REFERENCE_TONE.frequency} Hz, ${REFERENCE_TONE.level} dB SPL`}
      </button>
      <p class="about">
        Begin with the volume down. With the phones on a sound level meter's coupler, turn the volume up until it reads{' '}
        {REFERENCE_TONE.level} dB, and leave it there.
      </p>
    </>
  );
}
