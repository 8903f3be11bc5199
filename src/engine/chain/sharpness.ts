import { poles } from '../circuit/index.ts';
import type { RestPoint } from './levels.ts';
import type { Receiver } from './receiver.ts';
import { radioElements } from './rf-half.ts';
import type { Signal } from './signal.ts';

/** How sharply the set tunes at one angle, from the natural frequency next to the carrier. */
export interface Sharpness {
  /** resonant frequency of the whole [Hz] */
  readonly frequency: number;
  /** loaded Q: |Im s| / (2 |Re s|) with aerial and detector joined, the detector as damped as this level makes it */
  readonly loadedQ: number;
  /** the same with neither */
  readonly unloadedQ: number;
  /** -3 dB bandwidth, loaded [Hz] */
  readonly bandwidth: number;
}

/** Null where no oscillating natural frequency lies near the carrier. */
export function sharpness(receiver: Receiver, signal: Signal, angle: number, rest: RestPoint): Sharpness | null {
  const { tank, detector } = receiver;
  const f0 = signal.received.station.frequency;
  const joined = poles(
    [
      ...radioElements(tank, detector, signal, angle, f0),
      { kind: 'resistor', name: 'detector law', a: tank.detectorNode, b: 'earth', resistance: 1 / rest.radioConductance },
    ],
    f0,
  )?.find((s) => s.im > 0);
  const coldEnd = signal.impedance === null ? [{ kind: 'voltage' as const, name: 'emf', a: 'coil-cold', b: 'earth', re: 0, im: 0 }] : [];
  const alone = poles([...tank.elements(f0, angle), ...coldEnd], f0)?.find((s) => s.im > 0);
  if (!joined || !alone || joined.re === 0 || alone.re === 0) return null;
  const loadedQ = joined.im / (-2 * joined.re);
  const frequency = joined.im / (2 * Math.PI);
  return { frequency, loadedQ, unloadedQ: alone.im / (-2 * alone.re), bandwidth: frequency / loadedQ };
}
