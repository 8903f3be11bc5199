import type { StationReport, Verdict } from '#engine';
import type { Improvement } from '#find';

const OUTCOME = {
  clear: 'is heard clearly',
  understandable: 'is heard and mostly understood',
  faint: 'is only just heard, few words come through',
  silent: 'is not heard',
  'out-of-reach': 'is out of reach of the dial',
} as const;

/** Nobody adds so much across a coil or takes so much off: it is a coil for another band [F]; common practice, no source. */
const ANOTHER_COIL = 1e-9;

/** One plain sentence: heard or not, how loud, how sure, what limits it most, and the one change that would help most. */
export function verdictSentence(report: StationReport, best: Improvement | undefined): string {
  const { verdict } = report;
  const parts = [`${report.station} ${OUTCOME[verdict.outcome]}${loudness(verdict)}${odds(verdict)}`, limit(report)];
  if (best) parts.push(`what would help most: ${best.change.words} ${gainWords(best)}`);
  return `${parts.filter((p) => p !== '').join('; ')}.`;
}

/** A change and its worth: `(+6.2 dB)`. */
export function gainWords(i: Improvement): string {
  return i.gain === null ? '(then the dial reaches it)' : `(+${i.gain.toFixed(1)} dB)`;
}

function loudness(v: Verdict): string {
  if (v.level === null) return '';
  const phon = v.loudnessLevel === null ? '' : `, ${Math.round(v.loudnessLevel)} phon`;
  return ` (speech at ${Math.round(v.level)} dB SPL${phon})`;
}

function odds(v: Verdict): string {
  if (v.outcome === 'out-of-reach') return '';
  const percent = Math.round(100 * v.odds);
  const held = Math.min(99, Math.max(1, percent));
  return `, and would be in about ${held} of 100 such places`;
}

function limit(r: StationReport): string {
  const { verdict } = r;
  switch (verdict.limit) {
    case 'nothing':
      return '';
    case 'will-not-tune': {
      if (!('missing' in r.dial)) return '';
      const { missing } = r.dial;
      if (Math.abs(missing) > ANOTHER_COIL)
        return missing > 0
          ? 'even at full capacitance the set tunes far too high: this station asks for another coil, with many more turns'
          : 'even at least capacitance the set tunes far too low: this station asks for another coil, with far fewer turns';
      const pF = Number((Math.abs(missing) * 1e12).toPrecision(2));
      return missing > 0
        ? `even at full capacitance the set tunes too high, for want of about ${pF} pF: add turns, or a capacitor in parallel`
        : `even at least capacitance the set tunes too low, with about ${pF} pF too much: take off turns, or shorten the leads`;
    }
    case 'too-weak':
      return verdict.costliest && verdict.costliest.decibels > 3
        ? `what limits it most is too little signal, and the set loses most of it before "${verdict.costliest.rung}" (${verdict.costliest.decibels.toFixed(0)} dB)`
        : 'what limits it most is too little signal at this place';
    case 'room-noise':
      return 'what limits it most is the noise of the room';
    case 'neighbours':
      return `what limits it most is ${strongest(r)} coming through beside it`;
    case 'distortion':
      return r.signal.received.station.modulation.kind === 'fm'
        ? 'what limits it most is distortion: the slope is too short for the swing of the carrier'
        : 'what limits it most is distortion: the phones load the detector more for sound than for direct current';
    case 'set-noise':
      return 'what limits it most is the noise of the detector itself';
  }
}

function strongest(r: StationReport): string {
  const leaks = r.heard?.evaluation.leaks ?? [];
  return [...leaks].sort((a, b) => b.programme - a.programme)[0]?.station ?? 'another station';
}
