import { type DialPassPicture, drawDialPass } from '#draw';
import { dialAt, evaluate, humpsOf, leakLoss, REFERENCE_SOUND_PRESSURE } from '#engine';
import { formatFigure } from '#units';
import { writeText } from '../write-text.ts';
import type { Prepared } from './prepare.ts';
import type { Rendered } from './render.ts';

/** Angles at which the standing set is calculated for comparison. */
const STANDING = 61;

/** Writes what was heard while the dial turned, beside what levels say of the standing set. */
export function writePass(path: string, name: string, prepared: Prepared, { pass }: Rendered): void {
  const { dialled, station, reception, programme } = prepared;
  const { turn, dial } = dialled;
  if (!turn || !dial || !pass || pass.length === 0) return;
  const { receiver, signals } = reception;
  const carriers = signals.flatMap((signal) => {
    const { name: label, frequency } = signal.received.station;
    const at = dialAt(receiver, signal.arrival, frequency);
    return 'missing' in at ? [] : [{ label: `${label} ${formatFigure(frequency, 'Hz')}`, angle: at.angle }];
  });
  const picture: DialPassPicture = {
    title: `The dial turned across ${station.name} in ${turn.seconds} s: ${name}`,
    points: pass,
    humps: humpsOf(pass, dial.resonance.angle, station.modulation.kind === 'am' ? 1 : 2),
    reference: -20 * Math.log10(REFERENCE_SOUND_PRESSURE),
    unit: 'dB SPL',
    carriers,
    ...(programme.sent.tone === receiver.audio.tone ? { steady: steady(prepared, pass[0]!.angle, pass.at(-1)!.angle) } : {}),
    note: `${programme.words}; ${programme.sent.tone === null ? 'all sound of 50 ms' : 'the tone alone, in pieces of 50 ms'}; at the ear.`,
  };
  writeText(path, drawDialPass(picture));
}

function steady({ reception, dialled }: Prepared, from: number, to: number): { angle: number; level: number }[] {
  const { audio, phones } = reception.receiver;
  const lost = leakLoss(phones.coupling, audio.tone);
  return Array.from({ length: STANDING }, (_, k) => {
    const angle = from + ((to - from) * k) / (STANDING - 1);
    return { angle, level: evaluate(reception, dialled.station, angle, false).rated.level[1]! - lost };
  });
}
