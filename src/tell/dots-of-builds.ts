import type { Dots } from '#draw';
import type { DialSpread, HandBuilt, Tolerance } from '#find';

/** What the picture of many builds runs along: where the dial stands, or how far its frequency is off what was meant. */
export type Along = 'dial' | 'off';

export interface Builds {
  readonly built: readonly HandBuilt[];
  /** the set without any error */
  readonly meant: HandBuilt;
  readonly spread: DialSpread;
  readonly headroom: Tolerance['loudness']['headroom'];
  /** of the dial, from end to end [rad] */
  readonly rotation: number;
}

/** Sets that were built over and over, as `drawDots` shows them. */
export function dotsOfBuilds({ built, meant, spread, headroom, rotation }: Builds, along: Along): Dots {
  const degrees = (share: number): number => (share * rotation * 180) / Math.PI;
  const dot = (b: HandBuilt): Dots['meant'] => ({
    x: b.place === null ? null : along === 'dial' ? degrees(b.place) : b.off,
    headroom: b.headroom,
    outcome: b.outcome,
  });
  const [low, middle, high] = spread.place ?? [0, 0, 0];
  return {
    dots: built.map(dot),
    meant: dot(meant),
    x: along === 'dial' ? { label: 'dial for the station', unit: '°' } : { label: 'frequency off what was meant', unit: 'Hz' },
    spread: {
      x: along === 'off' ? spread.off : spread.place && [degrees(low), degrees(middle), degrees(high)],
      headroom,
    },
  };
}
