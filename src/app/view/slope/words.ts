import type { SlopeCurves } from '#jobs';
import { formatFigure } from '#units';

const percent = (share: number): string => `${(100 * share).toFixed(share < 0.0995 ? 1 : 0)} %`;
const hertz = (f: number): string => formatFigure(f, 'Hz', 3);

/** How the tank stands to the carrier: `96 kHz above`. */
export function tunedWords({ sharpness, carrier }: SlopeCurves): string {
  if (!sharpness) return 'nowhere near';
  const off = sharpness.frequency - carrier;
  return Math.abs(off) < 0.02 * sharpness.bandwidth ? 'onto' : `${hertz(Math.abs(off))} ${off > 0 ? 'above' : 'below'}`;
}

/** What the picture shows, in a sentence or two. */
export function slopeSentence(c: SlopeCurves): string {
  const { rated } = c;
  const sound = `The sound is ${formatFigure(rated.level, 'dB SPL')} at the ear, with ${percent(rated.secondHarmonic)} of second and ${percent(rated.thirdHarmonic)} of third harmonic.`;
  if (c.kind === 'am')
    return `This station's amplitude swings already, by ${percent(rated.swing)}, and its frequency stands still; so the dial belongs on the top of the tank, which is tuned ${tunedWords(c)} the carrier. Across the detector the amplitude swings by ${percent(rated.depth)}. ${sound}`;
  const octave = rated.secondHarmonic > 1 ? ' Both halves of a swing do the same there, so most of the sound is an octave too high.' : '';
  return `The tank is tuned ${tunedWords(c)} the carrier; each swing of ${hertz(rated.swing)} to either side changes the amplitude by ${percent(rated.depth)} about its middle, from ${formatFigure(rated.least, 'V', 3)} to ${formatFigure(rated.most, 'V', 3)}.${octave} ${sound}`;
}

/** What is tried that is not so; null where all is as it is. */
export function triedSentence(c: SlopeCurves): string | null {
  const tried: string[] = [];
  if (c.modulation !== c.builtModulation) {
    const write = (m: number): string => (c.kind === 'fm' ? hertz(m) : percent(m));
    tried.push(`the station swings ${write(c.modulation)} instead of ${write(c.builtModulation)}`);
  }
  if (c.losses !== 1) {
    const q = (s: SlopeCurves['sharpness'], key: 'loadedQ' | 'unloadedQ'): string => formatFigure(s?.[key] ?? null, '1', 3);
    tried.push(
      `the tank loses ${formatFigure(c.losses, '1', 2)} times as much: its Q alone is ${q(c.sharpness, 'unloadedQ')} instead of ${q(c.builtSharpness, 'unloadedQ')}, with aerial and detector joined ${q(c.sharpness, 'loadedQ')} instead of ${q(c.builtSharpness, 'loadedQ')}`,
    );
  }
  return tried.length === 0 ? null : `Only tried, not in your set: ${tried.join('; ')}.`;
}
