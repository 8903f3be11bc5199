import { C, phonesModel } from '#engine';
import { onBench } from '../bench.ts';
import type { Answer, Document } from '../document.ts';
import { inRatios } from './given.ts';

/** An earpiece and what leads to it, over frequency. */
export interface PhonesCurves {
  readonly name: string;
  /** [Hz] */
  readonly frequency: Float64Array;
  /** level for one volt rms across the earpiece, and for one on the detector's output [dB SPL], as the coupler reads it */
  readonly sensitivity: Float64Array;
  readonly throughout: Float64Array;
  /** level from which a tone is heard under this earpiece, on the same coupler, by a normal ear [dB SPL] */
  readonly threshold: Float64Array;
  /** room noise kept out [dB] */
  readonly attenuation: Float64Array;
  /** what the detector's output sees [ohm] */
  readonly load: Float64Array;
  readonly coupler: string;
}

/** The audio band of a broadcast, and a little more at its low end [Hz]. */
const [FROM, TO, POINTS] = [50, 15e3, 121];

export function phonesCurves({ document }: { readonly document: Document }): Promise<Answer<PhonesCurves>> {
  return onBench(document, ({ file: { phones } }) => {
    const model = phonesModel(phones);
    const frequency = inRatios(FROM, TO, POINTS);
    const sensitivity = frequency.map((f) => model.sensitivity(f));
    return {
      name: phones.earpiece.name,
      frequency,
      sensitivity,
      throughout: sensitivity.map((level, i) => level + 20 * Math.log10(C.abs(model.transfer(frequency[i]!)))),
      threshold: frequency.map((f) => model.threshold(f)),
      attenuation: frequency.map((f) => model.attenuation(f)),
      load: frequency.map((f) => C.abs(model.load(f))),
      coupler: model.coupler,
    };
  });
}
