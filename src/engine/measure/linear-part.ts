import { C, type Complex, fourierTransform } from '../numeric/index.ts';
import type { PhonesModel } from '../phones/index.ts';
import type { ProgrammeModulation } from '../programme/index.ts';

/**
 * A programme shaped about as a linear set would pass it on: pre-emphasis, then the audio network on the detector's output conductance.
 *
 * Stretches under a window are compared line by line, which is exact only where the set's response hardly changes over a line: an earpiece
 * that integrates would leave a false rest at -27 dB at 160 Hz. Compared with this shape, what is left to find is nearly flat. Any error of the shape that
 * is smooth over frequency is found and taken up by the comparison; its scale is of no account.
 *
 * @param audio - as sent, full scale 1, with some of what came before
 * @param conductance - of the detector's output at rest [S]
 */
export function linearShape(
  audio: Float64Array,
  rate: number,
  modulation: ProgrammeModulation,
  { load, transfer }: Pick<PhonesModel, 'load' | 'transfer'>,
  conductance: number,
): Float64Array {
  const tau = modulation.kind === 'fm' ? modulation.preEmphasis : 0;
  const shape = (f: number): Complex => {
    const z = load(f);
    const passed = C.div(C.mul(z, transfer(f)), C.add(C.ONE, C.scale(z, conductance)));
    return C.mul(passed, { re: 1, im: 2 * Math.PI * f * tau });
  };
  return filtered(audio, rate, shape);
}

/** A sound through a filter given by its response at frequencies [Hz] above zero; silence before and after. */
export function filtered(x: Float64Array, rate: number, response: (frequency: number) => Complex): Float64Array {
  let size = 1;
  while (size < 2 * x.length) size *= 2;
  const transform = fourierTransform(size);
  const re = new Float64Array(size);
  const im = new Float64Array(size);
  re.set(x);
  transform.forward(re, im);
  re[0] = 0;
  im[0] = 0;
  for (let k = 1; k <= size / 2; k++) {
    const h = response((k * rate) / size);
    const y = C.mul(h, { re: re[k]!, im: im[k]! });
    re[k] = y.re;
    im[k] = 2 * k === size ? 0 : y.im;
    re[size - k] = y.re;
    im[size - k] = -im[k]!;
  }
  transform.inverse(re, im);
  return re.slice(0, x.length);
}
