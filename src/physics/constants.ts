/** Published constants. Each with its unit and where it stands. Orbits use GM, which is known far better than G. */

/**
 * Newton's constant of gravitation G, m³ kg⁻¹ s⁻²; standard uncertainty 0.000 15e-11.
 *
 * @source CODATA 2018 and 2022 recommended values
 */
export const gravitationalConstant = 6.6743e-11

/**
 * Standard acceleration of free fall g_n, m/s², exact by definition. The value at a given place differs by up to 0.3 %.
 *
 * @source 3rd CGPM (1901), resolution 2
 */
export const standardGravity = 9.80665

/**
 * The astronomical unit, m, exact by definition.
 *
 * @source IAU 2012, resolution B2
 */
export const astronomicalUnit = 149597870700

/**
 * Nominal mass parameter GM of the Sun, m³/s².
 *
 * @source IAU 2015, resolution B3
 */
export const solarMassParameter = 1.3271244e20

/**
 * Nominal mass parameter GM of the Earth, m³/s².
 *
 * @source IAU 2015, resolution B3
 */
export const earthMassParameter = 3.986004e14

/**
 * Nominal mass parameter GM of Jupiter, m³/s².
 *
 * @source IAU 2015, resolution B3
 */
export const jupiterMassParameter = 1.2668653e17

/**
 * Nominal equatorial radius of the Earth, m.
 *
 * @source IAU 2015, resolution B3
 */
export const earthRadius = 6378100
