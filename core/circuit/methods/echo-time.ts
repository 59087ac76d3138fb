/** Speed of light in vacuum, exact by definition of the metre. */
const lightMetresPerSecond = 299_792_458;

/**
 * Distance to a reflection from its time there and back, in metres: velocity factor x c x t / 2.
 * @example
 * echoDistanceM({ nanoseconds: 40.43, velocityFactor: 0.66 }).toFixed(3) // => '4.000'
 */
export function echoDistanceM(echo: {
  readonly nanoseconds: number;
  readonly velocityFactor: number;
}): number {
  return (echo.velocityFactor * lightMetresPerSecond * echo.nanoseconds * 1e-9) / 2;
}

/**
 * Time there and back, in nanoseconds, of a reflection at a distance.
 * @example
 * echoNanoseconds({ metres: 4, velocityFactor: 0.66 }).toFixed(2) // => '40.43'
 */
export function echoNanoseconds(place: { readonly metres: number; readonly velocityFactor: number }): number {
  return (2 * place.metres * 1e9) / (place.velocityFactor * lightMetresPerSecond);
}

/**
 * Share of a pulse reflected by a resistance across a line (negative) of impedance Z0: -Z0 / (2 R + Z0).
 * @example
 * shuntReflection(10, 150) // => -0.882353
 */
export function shuntReflection(faultOhms: number, lineOhms: number): number {
  return -lineOhms / (2 * faultOhms + lineOhms);
}

/**
 * Share of a pulse reflected by a resistance in series in a line of impedance Z0: R / (R + 2 Z0).
 * @example
 * seriesReflection(300, 150) // => 0.5
 */
export function seriesReflection(faultOhms: number, lineOhms: number): number {
  return faultOhms / (faultOhms + 2 * lineOhms);
}
