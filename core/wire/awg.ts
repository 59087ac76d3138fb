/**
 * Diameter in mm of a solid conductor of an American gauge number: 0.127 x 92^((36 - n) / 39)
 * (ASTM B258, from memory). 0000 is -3.
 * @example
 * awgDiameterMm(36) // => 0.127
 */
export function awgDiameterMm(gauge: number): number {
  return 0.127 * 92 ** ((36 - gauge) / 39);
}

/**
 * Conductor area in mm2 of an American gauge number (ASTM B258, from memory).
 * @example
 * awgAreaMm2(20) // => 0.517619
 */
export function awgAreaMm2(gauge: number): number {
  return (Math.PI / 4) * awgDiameterMm(gauge) ** 2;
}
