import { type AerialModel, C, gainOf, gaussLegendre, SPEED_OF_LIGHT } from '#engine';

/**
 * Mean of the gain over the whole sphere: by conservation of power it is the efficiency, whatever the aerial.
 *
 * @param height - `sphere`, or `dome` for an aerial on a plane (the wave is then met with its reflection, twice the field at the plane)
 */
export function meanGain(model: AerialModel, frequency: number, height: 'sphere' | 'dome', points = 48): number {
  const { nodes, weights } = gaussLegendre(points);
  const wavelength = SPEED_OF_LIGHT / frequency;
  let sum = 0;
  for (let i = 0; i < points; i++) {
    const sine = height === 'sphere' ? nodes[i]! : (1 + nodes[i]!) / 2;
    const share = height === 'sphere' ? weights[i]! / 2 : weights[i]! / 4;
    for (let j = 0; j < points; j++) {
      const a = model.at(frequency, { azimuth: (2 * Math.PI * (j + 0.5)) / points, elevation: Math.asin(sine) });
      const square = C.abs2(a.horizontal) + C.abs2(a.vertical);
      sum += (share / points) * gainOf(height === 'sphere' ? square : 4 * square, a.impedance.re, wavelength);
    }
  }
  return sum;
}

/** Radiated share of the terminal resistance. */
export function efficiency(model: AerialModel, frequency: number): number {
  const a = model.at(frequency, { azimuth: 0, elevation: 0 });
  return (a.impedance.re - a.lossResistance) / a.impedance.re;
}
