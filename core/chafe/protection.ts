import type { Covering } from '../map/kinds.ts';

/** What a covering adds: needle strokes it stands, and the share of places where it is slit, slipped or short. */
export interface Protection {
  readonly strokes: number;
  readonly bypass: number;
}

/**
 * Strokes are placed inside the abrasion classes of LV 312 (see `tapeAbrasionClass`); which class each
 * covering falls in, and every bypass share, is common practice, no source.
 */
export const protectionTable: Readonly<Record<Covering, Protection>> = {
  bare: { strokes: 0, bypass: 0 },
  'pvc-tape': { strokes: 100, bypass: 0.2 }, // edge of classes A and B
  'fleece-tape': { strokes: 300, bypass: 0.15 }, // class B
  'pvc-tube': { strokes: 800, bypass: 0.1 }, // common practice, no source
  'cloth-tape': { strokes: 3_000, bypass: 0.1 }, // class D
  'convoluted-tube': { strokes: 5_000, bypass: 0.1 }, // class E
  'braided-sleeve': { strokes: 15_000, bypass: 0.05 }, // class F
};

/** Class borders in strokes: A, C and F published in a trade article on LV 312; B, D and E from memory. */
const abrasionClasses = [
  { name: 'A', from: 0 },
  { name: 'B', from: 100 },
  { name: 'C', from: 500 },
  { name: 'D', from: 1_000 },
  { name: 'E', from: 5_000 },
  { name: 'F', from: 15_000 },
] as const;
export type AbrasionClass = (typeof abrasionClasses)[number]['name'];

/**
 * LV 312 abrasion class of a tape from the strokes it stood.
 * @example
 * tapeAbrasionClass(3000) // => 'D'
 */
export function tapeAbrasionClass(strokes: number): AbrasionClass {
  let found: AbrasionClass = 'A';
  for (const { name, from } of abrasionClasses) if (strokes >= from) found = name;
  return found;
}

/**
 * Mean of 1 / strokes to copper: (1 - q) / (wall + cover) + q / wall. Wall and cover are both counted in
 * strokes of the same needle, so they add; q is where the cover is not there.
 * @example
 * meanWearRate(150, { strokes: 100, bypass: 0.2 }) * 150 // => 0.68
 */
export function meanWearRate(wallStrokes: number, cover: Protection): number {
  return (1 - cover.bypass) / (wallStrokes + cover.strokes) + cover.bypass / wallStrokes;
}

/** Order of coverings is judged on this wall; it is the same for every wall in the tables. */
const orderWallStrokes = 150;

/**
 * The covering that lets a wall last longer.
 * @example
 * strongerCover(protectionTable.bare, protectionTable['pvc-tape']).strokes // => 100
 */
export function strongerCover(a: Protection, b: Protection): Protection {
  return meanWearRate(orderWallStrokes, a) <= meanWearRate(orderWallStrokes, b) ? a : b;
}

/**
 * The covering that lets a wall last less long.
 * @example
 * weakerCover(protectionTable.bare, protectionTable['pvc-tape']).strokes // => 0
 */
export function weakerCover(a: Protection, b: Protection): Protection {
  return strongerCover(a, b) === a ? b : a;
}
