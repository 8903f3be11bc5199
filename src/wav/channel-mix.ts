/** Gains of a channel into left and right. */
export interface ChannelGain {
  readonly left: number;
  readonly right: number;
}

const HALF_POWER = Math.SQRT1_2;
const LEFT: ChannelGain = { left: 1, right: 0 };
const RIGHT: ChannelGain = { left: 0, right: 1 };
const MIDDLE: ChannelGain = { left: HALF_POWER, right: HALF_POWER };
const LEFT_BACK: ChannelGain = { left: HALF_POWER, right: 0 };
const RIGHT_BACK: ChannelGain = { left: 0, right: HALF_POWER };
const BACK_MIDDLE: ChannelGain = { left: 0.5, right: 0.5 };
const NOTHING: ChannelGain = { left: 0, right: 0 };

/** By the bits of the mask: front left, right, centre, low frequencies, back left, right, front left and right of centre, back centre, side left, right. */
const BY_BIT: readonly ChannelGain[] = [
  LEFT,
  RIGHT,
  MIDDLE,
  NOTHING,
  LEFT_BACK,
  RIGHT_BACK,
  LEFT,
  RIGHT,
  BACK_MIDDLE,
  LEFT_BACK,
  RIGHT_BACK,
];
/** Masks taken where the file has none, by channels: the layouts in common use. */
const USUAL: readonly number[] = [0, 0x4, 0x3, 0x7, 0x33, 0x37, 0x3f, 0x70f, 0x63f];

/**
 * How channels are mixed to left and right.
 *
 * One channel goes to both sides whole, two stay. More: front left and right whole, centre and surrounds by -3 dB to their sides, the low-frequency effects left
 * out, all by one factor so that full scale in every channel is full scale in the mix. Channels that the mask does not name go to both sides by -3 dB.
 * Source: Rec. ITU-R BS.775 (3/2 to 2/0, coefficients from memory); the bits: Microsoft (2001).
 */
export function channelMix(channels: number, mask: number | null): readonly ChannelGain[] {
  if (channels === 1) return [{ left: 1, right: 1 }];
  if (channels === 2) return [LEFT, RIGHT];
  const bits = mask ?? USUAL[channels] ?? 0;
  const named: ChannelGain[] = [];
  for (let bit = 0; bit < 32 && named.length < channels; bit++) if (bits & (1 << bit)) named.push(BY_BIT[bit] ?? MIDDLE);
  while (named.length < channels) named.push(MIDDLE);
  const most = Math.max(
    named.reduce((s, g) => s + g.left, 0),
    named.reduce((s, g) => s + g.right, 0),
  );
  return most === 0 ? named : named.map((g) => ({ left: g.left / most, right: g.right / most }));
}
