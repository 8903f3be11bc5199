import type { Loudness } from './dial-shape.ts';

/** A station on the dial: where it is loudest, on either side of its carrier. */
export interface StationOnDial {
  readonly name: string;
  readonly frequency: number;
  /** [rad] */
  readonly humps: readonly number[];
  readonly picked: boolean;
}

export interface DialProps {
  /** from least to greatest capacitance [rad] */
  readonly rotation: number;
  readonly table: readonly { readonly angle: number; readonly frequency: number }[];
  readonly angle: number;
  readonly stations: readonly StationOnDial[];
  /** the picked station's loudness over the whole dial, and finely about its carrier */
  readonly loudness: readonly Loudness[];
  readonly onTurn: (angle: number) => void;
  /** the hand has let go */
  readonly onRest: () => void;
}
