import type { Listening } from '../../model/listening.ts';

const PROGRAMMES = [
  ['own', 'what the station sends: sentences, or music'],
  ['sentences', 'sentences, read aloud'],
  ['music', 'music'],
  ['speech-noise', 'noise with the spectrum of speech'],
  ['tone', 'the test tone, rated'],
  ['silence', 'silence, the carrier alone'],
] as const;

/** What the station is to send: one of the programmes that come along, or a recording of one's own. */
export function Sent({ listening }: { readonly listening: Listening }) {
  const { sent } = listening;
  const own = sent.value.kind === 'wav' ? sent.value.name : null;
  return (
    <fieldset>
      <legend>the station sends</legend>
      <select
        aria-label="programme"
        value={sent.value.kind}
        onChange={(e) => {
          const kind = e.currentTarget.value as (typeof PROGRAMMES)[number][0] | 'wav';
          if (kind !== 'wav') sent.value = { kind };
        }}
      >
        {PROGRAMMES.map(([kind, words]) => (
          <option key={kind} value={kind}>
            {words}
          </option>
        ))}
        {own !== null && <option value="wav">{own}</option>}
      </select>
      <label>
        or a WAV file of your own:{' '}
        <input
          type="file"
          accept=".wav,audio/wav"
          onChange={(e) => {
            const file = e.currentTarget.files?.[0];
            if (file) void file.arrayBuffer().then((bytes) => Object.assign(sent, { value: { kind: 'wav', name: file.name, bytes } }));
          }}
        />
      </label>
      <p class="about">It stays on this machine.</p>
    </fieldset>
  );
}
