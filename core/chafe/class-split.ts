import type { FaultClass } from '../map/kinds.ts';

/** What can act on a loom; each has its own row of what it leads to. */
export const mechanisms = [
  'vibration',
  'hinge-flex',
  'foot-load',
  'seat-slide',
  'tight-bend',
  'wet',
  'joint',
] as const;
export type Mechanism = (typeof mechanisms)[number];

export type ClassSplit = Readonly<Record<FaultClass, number>>;

/** A short's own split: mostly to the body that wore it through, seldom to a supply wire beside it. */
const shorted = (short: number, open: number, highResistance: number): ClassSplit => ({
  'short-to-ground': short * 0.8,
  'wire-to-wire': short * 0.15,
  'short-to-supply': short * 0.05,
  open,
  'high-resistance': highResistance,
});

/** Chance of each class of fault given the mechanism; rows sum to one. Common practice, no source. */
export const classSplit: Readonly<Record<Mechanism, ClassSplit>> = {
  vibration: shorted(0.85, 0.12, 0.03), // edges and holes alike: short 0.85, open or thin 0.15
  'foot-load': shorted(0.7, 0.25, 0.05), // short 0.7
  'seat-slide': shorted(0.75, 0.2, 0.05), // short 0.75
  'hinge-flex': shorted(0.15, 0.7, 0.15), // short 0.15: the conductor breaks inside
  'tight-bend': shorted(0.5, 0.4, 0.1), // common practice, no source
  wet: shorted(0.2, 0.2, 0.6), // corrosion first makes resistance
  joint: shorted(0.1, 0.4, 0.5), // connector strain: short 0.1
};
