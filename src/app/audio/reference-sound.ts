import { CALIBRATION_FREQUENCY, CALIBRATION_LEVEL, pressureOf, soundScale } from '#engine';

/** The tone by which playback is set to its true level: its peak as a sample, full scale 1, no make-up gain. */
export const REFERENCE_TONE = {
  frequency: CALIBRATION_FREQUENCY,
  level: CALIBRATION_LEVEL,
  peak: Math.SQRT2 * pressureOf(CALIBRATION_LEVEL) * soundScale().samplesPerPascal,
} as const;

/** Plays it until the function that comes back is called. */
export function playReferenceTone(): () => void {
  const context = new AudioContext();
  const tone = new OscillatorNode(context, { frequency: REFERENCE_TONE.frequency });
  const gain = new GainNode(context, { gain: 0 });
  tone.connect(gain).connect(context.destination);
  // a soft start: a step would click
  gain.gain.setTargetAtTime(REFERENCE_TONE.peak, context.currentTime, 0.02);
  tone.start();
  return () => {
    gain.gain.setTargetAtTime(0, context.currentTime, 0.02);
    setTimeout(() => void context.close(), 200);
  };
}
