/**
 * Values of the 256 codes of A-law and mu-law, full scale 1: the 13- and 14-bit values of the tables, as whole multiples of 2^-15.
 *
 * Source: Rec. ITU-T G.711 (1988), tables 1 and 2.
 */
export const A_LAW: Float64Array = Float64Array.from({ length: 256 }, (_, code) => {
  const bits = code ^ 0x55;
  const segment = (bits >> 4) & 7;
  const mantissa = bits & 15;
  const size = segment === 0 ? 2 * mantissa + 1 : (2 * mantissa + 33) << (segment - 1);
  return ((bits & 0x80 ? 1 : -1) * size * 8) / 32768;
});

export const MU_LAW: Float64Array = Float64Array.from({ length: 256 }, (_, code) => {
  const bits = code ^ 0xff;
  const size = (((2 * (bits & 15) + 33) << ((bits >> 4) & 7)) - 33) * 4;
  // the code of minus zero is zero too
  return size === 0 ? 0 : ((bits & 0x80 ? -1 : 1) * size) / 32768;
});
