import { useState } from 'preact/hooks';
import type { Field } from '#set-file';
import { DIMENSIONS, type DimensionName, readQuantity, writeForPeople } from '#units';
import { startOf } from '../../model/starts.ts';
import { Complaints, useEditing } from './editing.tsx';
import { asText, idOf, inWords } from './words.ts';

type QuantityField = Extract<Field, { kind: 'quantity' }>;

/** Steps of a slider to either side of where it stood: twice and half the value at its ends. */
const STEPS = 200;

/** A number with its unit, typed as a person writes it, and a slider around it. */
export function Quantity({ field }: { readonly field: QuantityField }) {
  const { edit, problemsAt } = useEditing();
  const id = idOf(field.path);
  const standing = asText(field.given ?? field.fallback);
  // what is typed stays as typed, right or wrong, until something else changes the field
  const [typed, setTyped] = useState<{ readonly text: string; readonly over: string } | null>(null);
  const text = typed?.over === standing ? typed.text : standing;
  const reading = readQuantity(plainOrText(text, field.dimension), field.dimension);
  const refusal = text === '' || reading.ok || field.words.includes(text) ? null : reading;
  const commit = (value: string): void => {
    if (value === standing) return;
    if (value === '' && !field.required) edit(field.path, undefined);
    else edit(field.path, plainOrText(value, field.dimension));
  };
  const wrong = refusal !== null || problemsAt(field.path).length > 0;
  return (
    <div class={wrong ? 'field wrong' : 'field'}>
      <label for={id}>{inWords(field.key)}</label>
      <input
        id={id}
        type="text"
        value={text}
        placeholder={DIMENSIONS[field.dimension].examples[0]}
        list={field.words.length > 0 ? `${id}-words` : undefined}
        class={field.given === undefined ? 'usual' : undefined}
        aria-invalid={wrong}
        aria-describedby={`${id}-about ${id}-wrong`}
        spellcheck={false}
        autocomplete="off"
        onInput={(e) => setTyped({ text: e.currentTarget.value, over: standing })}
        onChange={(e) => commit(e.currentTarget.value.trim())}
      />
      {field.words.length > 0 && (
        <datalist id={`${id}-words`}>
          {field.words.map((w) => (
            <option key={w} value={w} />
          ))}
        </datalist>
      )}
      {reading.ok && <Slider field={field} value={reading.value} standing={standing} />}
      {field.forms && (
        <select
          aria-label={`${inWords(field.key)}: another way to give it`}
          value=""
          onChange={(e) => edit(field.path, startOf(field.forms!.by, e.currentTarget.value, field.path))}
        >
          <option value="">as a number</option>
          {field.forms.words.map((w) => (
            <option key={w} value={w}>
              {w}
            </option>
          ))}
        </select>
      )}
      <p class="about" id={`${id}-about`}>
        {field.about}
        {field.given === undefined && field.fallback !== undefined ? ' (as usual)' : ''}
      </p>
      {refusal ? (
        <p class="complaint" id={`${id}-wrong`} aria-live="polite">
          {refusal.why}. {refusal.mend}
        </p>
      ) : (
        <Complaints field={field} id={`${id}-wrong`} />
      )}
    </div>
  );
}

/** Turns and pure numbers stand in a file as numbers, all else as text. */
export function plainOrText(text: string, dimension: DimensionName): string | number {
  const plain = dimension === 'turns' || DIMENSIONS[dimension].symbol === '';
  return plain && /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i.test(text) ? Number(text) : text;
}

/** Runs from half to twice the value where it was taken hold of; a value of either sign runs one whole of itself to each side. */
function Slider({ field, value, standing }: { readonly field: QuantityField; readonly value: number; readonly standing: string }) {
  const { edit } = useEditing();
  const [held, setHeld] = useState<{ readonly from: number; readonly key: string } | null>(null);
  const from = held?.from ?? value;
  if (from === 0) return null;
  const { range, dimension } = field;
  const logarithmic = DIMENSIONS[dimension].symbol !== 'rad' && !DIMENSIONS[dimension].symbol.startsWith('dB') && from > 0;
  const at = (k: number): number => (logarithmic ? from * 2 ** (k / STEPS) : from + (Math.abs(from) * k) / STEPS);
  const position = logarithmic ? STEPS * Math.log2(value / from) : ((value - from) / Math.abs(from)) * STEPS;
  const within = (x: number): number => {
    const bounded = Math.min(range.max ?? Number.POSITIVE_INFINITY, Math.max(range.min ?? range.above ?? Number.NEGATIVE_INFINITY, x));
    if (dimension === 'turns') return Math.max(range.min ?? 0.25, Math.round(4 * bounded) / 4);
    return range.whole ? Math.round(bounded) : bounded;
  };
  const written = (x: number): string | number => {
    if (dimension === 'turns' || DIMENSIONS[dimension].symbol === '') return Number(x.toPrecision(3));
    return writeForPeople(x, dimension, 3).replace('µ', 'u').replace('Ω', 'ohm');
  };
  return (
    <input
      type="range"
      aria-label={`${inWords(field.key)} slider`}
      aria-valuetext={standing}
      min={-STEPS}
      max={STEPS}
      value={Math.round(position)}
      onInput={(e) => {
        const key = held?.key ?? `${field.path.join('.')}@${performance.now()}`;
        if (!held) setHeld({ from: value, key });
        edit(field.path, written(within(at(Number(e.currentTarget.value)))), key);
      }}
      onChange={() => setHeld(null)}
    />
  );
}
