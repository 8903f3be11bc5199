/** What a former that stays in the coil does to it, to first order. */
export interface FormerEffect {
  /** capacitance across the coil that the former adds [F] */
  readonly capacitance: number;
  /** loss tangent of the self-capacitance with the former in it */
  readonly lossTangent: number;
}

/**
 * Effect of a solid former on the self-capacitance of the coil: half the electric field runs inside, half outside.
 *
 * C_added = C (eps_r - 1) / 2;  tan = tan_former eps_r / (eps_r + 1)
 *
 * @param selfCapacitance - in air [F]
 * @param permittivity - eps_r of the former
 * @param lossTangent - tan_former
 * Holds for: an estimate, for a solid rod; a thin-walled tube adds less. Inductance is untouched (the former is not magnetic).
 * Source: estimate from the field of a thin cylinder, which is as strong inside as outside near its wall.
 */
export function formerEffect(selfCapacitance: number, permittivity: number, lossTangent: number): FormerEffect {
  return {
    capacitance: (selfCapacitance * (permittivity - 1)) / 2,
    lossTangent: (lossTangent * permittivity) / (permittivity + 1),
  };
}
