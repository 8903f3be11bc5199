/**
 * Diameter of American wire gauge n [m].
 *
 * d = 0.127 mm x 92^((36 - n)/39); 0, 2/0, 3/0, 4/0 are n = 0, -1, -2, -3.
 * Source: ASTM B258. Holds for 4/0 to 56.
 */
export function awgDiameter(n: number): number {
  return 0.127e-3 * 92 ** ((36 - n) / 39);
}

/**
 * Standard wire gauge, diameters in ten-thousandths of an inch from number 0 on.
 *
 * Source: BS 3737:1964; 9 to 33 seen in printed tables, the others from memory.
 */
const SWG_FROM_ZERO = [
  3240, 3000, 2760, 2520, 2320, 2120, 1920, 1760, 1600, 1440, 1280, 1160, 1040, 920, 800, 720, 640, 560, 480, 400, 360, 320, 280, 240, 220,
  200, 180, 164, 148, 136, 124, 116, 108, 100, 92, 84, 76, 68, 60, 52, 48, 44, 40, 36, 32, 28, 24, 20, 16, 12, 10,
];

/** Diameter of standard wire gauge n [m], 0 to 50; null for a number the table does not have. */
export function swgDiameter(n: number): number | null {
  const tenThousandths = SWG_FROM_ZERO[n];
  return tenThousandths === undefined ? null : (tenThousandths * 25.4) / 1e7;
}

export const AWG_RANGE = { from: -3, to: 56 } as const;
export const SWG_RANGE = { from: 0, to: SWG_FROM_ZERO.length - 1 } as const;
