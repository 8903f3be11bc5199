import type * as z from 'zod/mini';
import type { PhonesDescription } from '#engine';
import type { earpieceForm, PhonesForm, transformerForm } from '../forms/phones-form.ts';

/** Leakage of an ordinary transformer over its primary inductance: an estimate. */
const LEAKAGE = 0.01;

export function assembleTransformer(form: z.core.output<typeof transformerForm>): NonNullable<PhonesDescription['transformer']> {
  return { ...form, leakageInductance: form.leakageInductance ?? LEAKAGE * form.primaryInductance };
}

export function assembleEarpiece(form: z.core.output<typeof earpieceForm>): PhonesDescription['earpiece'] {
  const { sensitivity } = form;
  return {
    ...form,
    sensitivity: typeof sensitivity === 'number' ? [{ frequency: 1000, level: sensitivity }] : sensitivity,
  } as PhonesDescription['earpiece'];
}

export function assemblePhones(form: PhonesForm): PhonesDescription {
  const { transformer, earpiece, ...rest } = form;
  return {
    ...rest,
    ...(transformer && { transformer: assembleTransformer(transformer) }),
    earpiece: assembleEarpiece(earpiece),
  } as PhonesDescription;
}
