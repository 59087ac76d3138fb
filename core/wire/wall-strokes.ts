import { type Wire, wireShape } from './wire-shape.ts';

/** Needle strokes through 0.5 mm2 thin wall (ISO 6722-1 scrape test, from memory, low confidence). */
export const thinHalfStrokes = 150;
const thinHalfAreaMm2 = 0.16667;

/**
 * Section a needle across the wire must cut away to reach copper, in mm2: the circle's segment of height
 * `wallMm` (plane geometry of the ISO 6722-1 scrape test).
 * @example
 * wearAreaMm2(1.6, 0.22) // => 0.166668
 */
export function wearAreaMm2(outerMm: number, wallMm: number): number {
  const radius = outerMm / 2;
  return (
    radius ** 2 * Math.acos((radius - wallMm) / radius) -
    (radius - wallMm) * Math.sqrt(2 * radius * wallMm - wallMm ** 2)
  );
}

/**
 * Strokes of the scrape needle that a wire's insulation stands, scaled by the section to be worn away from
 * 150 for 0.5 mm2 thin wall.
 * @example
 * wallStrokes({ conductorMm2: 0.5, insulation: 'thin-wall' }) // => 149.998
 */
export function wallStrokes(wire: Wire): number {
  const { outerMm, minimumWallMm } = wireShape(wire);
  return (thinHalfStrokes * wearAreaMm2(outerMm, minimumWallMm)) / thinHalfAreaMm2;
}
