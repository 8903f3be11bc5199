import { C } from '../numeric/index.ts';
import { audioLadder } from './audio-network.ts';
import type { PhonesDescription } from './description.ts';
import { earpieceImpedance } from './earpiece.ts';
import { outputResonance } from './output-resonance.ts';

/** Above this a detector's own leakage is no longer carried off, and it charges the output until it biases itself off [ohm]: estimate, some ten times the zero-bias resistance of the most reluctant detectors. */
const NO_PATH = 5e6;
/** The telephone's speech band [Hz]: a curve that does not span it says too little about speech. */
const SPEECH_FROM = 300;
const SPEECH_TO = 3400;

/** What a maker should know about the parts after the detector, in plain sentences. */
export function phonesRemarks(d: PhonesDescription): string[] {
  const remarks: string[] = [];
  const e = d.earpiece;
  const direct = audioLadder(d, 0).load.re;
  if (direct > NO_PATH)
    remarks.push(
      'There is no path for direct current: the detector charges its output until it biases itself off. Put a resistor of some 500 kohm, or a choke of several henries, across the output.',
    );
  const earpiece = C.abs(earpieceImpedance(e, 1000));
  if (d.load !== undefined && d.load < earpiece / 3 && !d.transformer)
    remarks.push('The load resistor is far below the impedance of the earpiece and takes most of the audio power.');
  if (d.load !== undefined && direct < d.load / 20)
    remarks.push('The load resistor does nothing for the direct current: a winding of far lower resistance carries it.');
  if (d.blocking !== undefined) {
    const transfer = C.abs(audioLadder(d, SPEECH_FROM).transfer);
    const without = C.abs(audioLadder(withoutBlocking(d), SPEECH_FROM).transfer);
    if (transfer < without / 2)
      remarks.push('The blocking capacitor takes more than half of the voltage at 300 Hz: a larger one keeps the bass.');
  }
  const first = e.sensitivity[0]!.frequency;
  const last = e.sensitivity[e.sensitivity.length - 1]!.frequency;
  if (first > SPEECH_FROM || last < SPEECH_TO)
    remarks.push(
      `The sensitivity is known from ${first} Hz to ${last} Hz only; it is held to 300 Hz and 3.4 kHz and falls by 12 dB per octave beyond.`,
    );
  const resonance = outputResonance(d);
  if (resonance && resonance.frequency > 100 && resonance.frequency < 5000)
    remarks.push(`The inductance across the output resonates with the capacitance near ${Math.round(resonance.frequency)} Hz.`);
  if ((e.coupler === 'IEC 60318-4') !== (e.coupling === 'insert' || e.coupling === 'plug'))
    remarks.push(`Thresholds for the ${e.coupler} coupler were found with another kind of earpiece: expect an error of some 5 dB.`);
  return remarks;
}

function withoutBlocking(d: PhonesDescription): PhonesDescription {
  const { blocking: _, ...rest } = d;
  return rest;
}
