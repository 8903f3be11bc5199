import { useState } from 'preact/hooks';
import type { ViewProps } from '../view-props.ts';

/** The set file as it is written, to be read and changed by hand, and earlier versions of it. */
export function FileView({ desk }: ViewProps) {
  const standing = desk.text.value;
  // what is typed stays until it is taken or given up, whatever becomes of the set meanwhile
  const [typed, setTyped] = useState<{ readonly text: string; readonly over: string } | null>(null);
  const text = typed?.text ?? standing;
  const wrong = text === standing ? null : fault(text);
  const take = (taken: string): void => {
    desk.edit([], JSON.parse(taken));
    setTyped(null);
  };
  return (
    <div class="view">
      <div>
        <h2>
          <label for="file-text">the set file</label>
        </h2>
        <p class="about">
          What you see everywhere else is this file. Values are written as people write them, with a unit: "12 pF", "2 1/2", "18 AWG".
        </p>
        <textarea
          id="file-text"
          class="file-text"
          value={text}
          spellcheck={false}
          rows={24}
          aria-invalid={wrong !== null}
          aria-describedby="file-wrong"
          onInput={(e) => setTyped({ text: e.currentTarget.value, over: typed?.over ?? standing })}
        />
        <p id="file-wrong" class="complaint" aria-live="polite">
          {wrong ?? (typed && typed.over !== standing ? 'The set has changed since you began to type here.' : '')}
        </p>
        <div class="tools">
          <button type="button" class="main" disabled={text === standing || wrong !== null} onClick={() => take(text)}>
            take it
          </button>
          <button type="button" disabled={text === standing} onClick={() => setTyped(null)}>
            leave it as it was
          </button>
        </div>
        <ul class="next">
          {desk.bench.problems.value.map((p) => (
            <li key={`${p.path}${p.why}`}>
              line {p.line}: {p.path} is {p.given}: {p.why}. {p.mend}
            </li>
          ))}
        </ul>
      </div>
      <Versions desk={desk} />
    </div>
  );
}

function Versions({ desk }: Pick<ViewProps, 'desk'>) {
  if (desk.versions.value.length === 0) return null;
  return (
    <div>
      <h2>earlier versions</h2>
      <ul class="next">
        {desk.versions.value.map((v) => (
          <li key={v.at}>
            <span>{new Date(v.at).toLocaleString()}</span>
            <button type="button" onClick={() => desk.open(v)}>
              open this one
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function fault(text: string): string | null {
  try {
    JSON.parse(text);
    return null;
  } catch (e) {
    return `This is not JSON: ${(e as Error).message}.`;
  }
}
