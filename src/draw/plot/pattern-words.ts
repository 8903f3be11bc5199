import { fixedText } from './number-text.ts';
import { bearingWords, type Facts, type PatternCut } from './pattern-facts.ts';
import { type StationMark, stationLines } from './pattern-stations.ts';

/** What plane it is. */
export const cutWords = (cut: PatternCut): string =>
  cut.kind === 'azimuth'
    ? `Round the compass at ${degrees(cut.elevation)} elevation; rings in dBi.`
    : `Upright, with ${bearingWords(cut.azimuth)} to the right; rings in dBi.`;

const degrees = (angle: number): string => `${fixedText((angle * 180) / Math.PI, 0)}°`;

/** `at 12° elevation to the right`. */
function elevationWords(angle: number): string {
  const left = Math.cos(angle) < -1e-9;
  const elevation = Math.asin(Math.max(-1, Math.min(1, Math.sin(angle))));
  return `at ${degrees(elevation)} elevation${Math.abs(Math.cos(angle)) < 1e-9 ? '' : left ? ' to the left' : ' to the right'}`;
}

/** Greatest gain and front to back, as a sentence. */
export function factWords({ kind, greatest, frontToBack }: Facts): string {
  if (!greatest) return 'Nothing is radiated in this cut.';
  const where = kind === 'azimuth' ? `towards ${bearingWords(greatest.angle)}` : elevationWords(greatest.angle);
  const back = frontToBack === null ? '' : ` Front to back ${fixedText(frontToBack, 1)} dB.`;
  return `Greatest gain ${fixedText(greatest.gain, 1)} dBi ${where}.${back}`;
}

/** The plot in words, for those who do not see it. */
export function patternWords(cut: PatternCut, facts: Facts, stations: readonly StationMark[]): string {
  const heard = stations.map((s) => stationLines(cut, s)).map((lines) => lines.join(' '));
  return [cutWords(cut), factWords(facts), ...(heard.length > 0 ? [`Stations: ${heard.join('; ')}.`] : [])].join(' ');
}
