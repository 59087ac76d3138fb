import { sayDrawnLength } from './say-drawn-length.ts';
import type { LengthSystem } from './say-length.ts';

/** A drawing follows the loom's own way no closer than this; common practice, no source. */
const drawnTooLong = 0.95;
/** A loom this many times as long as its way is seldom one run. */
const farTooLong = 2;

/**
 * What speaks against a measured length, as a question to the one who measured; null where nothing does. The
 * figure stands as typed: the tape may be right and the drawing wrong. Lengths in mm.
 */
export function measuredDoubt(measuredMm: number, drawnMm: number, lengths: LengthSystem): string | null {
  const say = (mm: number): string => {
    const { text, unit } = sayDrawnLength(mm, lengths);
    return `${text} ${unit}`;
  };
  const both = `${say(measuredMm)} measured, ${say(drawnMm)} drawn.`;
  if (measuredMm < drawnTooLong * drawnMm) {
    return `${both} No loom is shorter than its way. Measured to the same ends? Is the map’s scale right?`;
  }
  if (measuredMm > farTooLong * drawnMm) {
    return `${both} That leaves more loom spare than its way is long. Measured to the same ends?`;
  }
  return null;
}
