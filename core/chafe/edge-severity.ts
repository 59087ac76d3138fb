import type { RubSpotKind } from '../map/kinds.ts';

/**
 * How fast each kind of spot wears through a loom, the scrape needle being 1. Common practice, no source;
 * the spread is bounded by published wear coefficients: fretting 1e-6 to 1e-4, abrasive 1e-2 to 1e-1
 * (NPTEL course 112104122, lecture 7.5).
 */
export const edgeSeverity: Readonly<Record<RubSpotKind, number>> = {
  burr: 1, // common practice, no source: a weld burr or spatter cuts as the needle does
  'fastener-tip': 1, // common practice, no source
  'raw-edge': 0.3, // common practice, no source: cut sheet, bare hole
  'seat-mount': 0.2, // common practice, no source
  hinge: 0.2, // common practice, no source
  bracket: 0.1, // common practice, no source: stamped edge, mostly coated
  'moving-part': 0.1, // common practice, no source
  flange: 0.03, // common practice, no source: hemmed or painted
  'panel-edge': 0.02, // common practice, no source: trim or folded panel edge
  'clamp-edge': 0.02, // common practice, no source
  other: 0.03, // common practice, no source
  'smooth-panel': 0.001, // common practice, no source
};

/** The three steps a person may set a mapped spot to: common practice, no source. */
export const severityFactor: Readonly<Record<1 | 2 | 3, number>> = { 1: 0.5, 2: 1, 3: 2 };

/** Severity of what no one needs to map: common practice, no source. */
export const surfaceSeverity = {
  /** The painted body beside any loom. */
  body: 0.001,
  /** Pressed ribs, grit and the trodden lid under a loom that feet reach. */
  underfoot: 0.01,
  /** Seat runners and springs along a loom that moves with the seat. */
  seatFrame: 0.2,
  /** The loom's own clip at the end of a span. */
  clip: 0.02,
  /** A bare hole's raw edge; a fitted grommet multiplies it. */
  hole: 0.3,
  grommetFactor: 0.02,
} as const;

/**
 * Severity of an edge whose radius is known: min(1, sqrt(0.225 / r)), the scrape needle's radius being
 * 0.225 mm. Follows the line-contact pressure of Hertz (from memory).
 * @example
 * severityOfRadius(2.5) // => 0.3
 */
export function severityOfRadius(radiusMm: number): number {
  return Math.min(1, Math.sqrt(0.225 / radiusMm));
}
