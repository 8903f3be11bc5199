/** Physical constants, SI. Source: CODATA 2018 (exact where the SI defines them); mu0 to its CODATA 2018 value. */

/** Speed of light in vacuum [m/s], exact. */
export const SPEED_OF_LIGHT = 299_792_458;
/** Magnetic constant [H/m]. The handbooks' 4e-7 pi differs by 5.5e-10 relative. */
export const MU0 = 1.256_637_062_12e-6;
/** Electric constant [F/m]. */
export const EPSILON0 = 8.854_187_8128e-12;
/** Wave impedance of vacuum [ohm]. */
export const ETA0 = 376.730_313_668;
/** Boltzmann constant [J/K], exact. */
export const BOLTZMANN = 1.380_649e-23;
/** Elementary charge [C], exact. */
export const ELEMENTARY_CHARGE = 1.602_176_634e-19;
/** Reference temperature of radio noise figures [K], ITU-R P.372. */
export const NOISE_REFERENCE_TEMPERATURE = 290;
/** Reference sound pressure [Pa rms], ISO 1683. */
export const REFERENCE_SOUND_PRESSURE = 20e-6;
