import { meanWearRate, type Protection } from './protection.ts';

/** Force of the scrape needle, ISO 6722-1 thin wall, N. */
const needleN = 7;
/** Length of loom one needle track stands for, mm: common practice, no source. */
const trackMm = 1;

/**
 * Mean of 1 / capacity of wall and cover in 1/(N mm): a stroke there and back of a 7 N needle over 1 mm of
 * loom is worth 14 N mm of force times slip. Wear is Archard's: volume by force times slip.
 * @example
 * inverseCapacity(150, { strokes: 0, bypass: 0 }) // => 0.00047619
 */
export function inverseCapacity(wallStrokes: number, cover: Protection): number {
  return meanWearRate(wallStrokes, cover) / (2 * needleN * trackMm);
}

/** A bend of this many loom diameters or more costs nothing (TM 1-1500-204-23-4, item 27). */
export const advisedBendDiameters = 10;

/**
 * How much faster a loom wears where it is bent tighter than ten times its diameter: max(1, 10 D / R).
 * Common practice, no source, for the form; ten diameters is TM 1-1500-204-23-4.
 * @example
 * bendFactor(5.842, 20) // => 2.921
 */
export function bendFactor(diameterMm: number, radiusMm: number): number {
  return Math.max(1, (advisedBendDiameters * diameterMm) / radiusMm);
}
