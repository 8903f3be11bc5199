/** Conductors that coils and aerials are made of. */
export type Metal = 'copper' | 'brass' | 'aluminium' | 'steel' | 'silver';

/**
 * Resistivity at 20 C [ohm m] and relative permeability seen by radio frequency.
 *
 * Copper: IEC 60028, 1/58 ohm mm^2/m. Silver, aluminium: handbook values, from memory. Brass (about 63/37) varies with the alloy by some 15 %.
 * Steel: plain carbon steel; its permeability at VHF is uncertain by a factor of three: an estimate.
 */
export const METALS: Readonly<Record<Metal, { readonly resistivity: number; readonly permeability: number }>> = {
  copper: { resistivity: 1 / 58e6, permeability: 1 },
  brass: { resistivity: 6.6e-8, permeability: 1 },
  aluminium: { resistivity: 2.82e-8, permeability: 1 },
  steel: { resistivity: 1.6e-7, permeability: 100 },
  silver: { resistivity: 1.59e-8, permeability: 1 },
};
