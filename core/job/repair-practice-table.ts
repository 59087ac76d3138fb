import { z } from 'zod';

/**
 * What can be done to a wire. `joint`: a join stays in the wire. `sealed`: kept dry by itself.
 * Rows from published repair accounts and common practice (no source).
 */
interface Practice {
  readonly joint: boolean;
  readonly sealed: boolean;
  /** Done with a flame or hot air. */
  readonly hot: boolean;
}

const practice = (joint: boolean, sealed: boolean, hot: boolean): Practice => ({ joint, sealed, hot });

export const repairPractices = [
  'crimp-and-sealed-sleeve',
  'crimp-and-tape',
  'new-length-let-in',
  'joints-moved-off-the-bend',
  'joints-staggered',
  'pair-kept-twisted',
  'overlay-wire',
  'part-loom-renewed',
  'terminal-renewed',
  'plug-cleaned',
  'plug-renewed',
  'insulation-covered',
] as const;
export const repairPracticeSchema = z.enum(repairPractices);
export type RepairPractice = z.infer<typeof repairPracticeSchema>;

/** The properties the repair warnings go by. */
export const repairPracticeTable: Readonly<Record<RepairPractice, Practice>> = {
  /** Closed-barrel crimp under adhesive-lined heat-shrink (published repair account). */
  'crimp-and-sealed-sleeve': practice(true, true, true),
  /** Tape alone only inside the cabin (published repair account). */
  'crimp-and-tape': practice(true, false, false),
  /** Same colour, same or larger section, flexible grade, slack for full travel. Common practice, no source. */
  'new-length-let-in': practice(true, false, false),
  /** No join in a bending zone: the joins sit in the body (published case). */
  'joints-moved-off-the-bend': practice(false, false, false),
  /** No two joins side by side; 40 to 50 mm apart. Common practice, no source. */
  'joints-staggered': practice(false, false, false),
  /** Untwist less than 50 mm. Common practice, no source. */
  'pair-kept-twisted': practice(false, false, false),
  'overlay-wire': practice(true, false, false),
  'part-loom-renewed': practice(false, true, false),
  'terminal-renewed': practice(false, true, false),
  'plug-cleaned': practice(false, true, false),
  'plug-renewed': practice(false, true, false),
  /** Scuffed but not through: covered again. */
  'insulation-covered': practice(false, true, false),
};

/** What stops it rubbing now: cures of published campaigns and common practice. */
export const rubCures = [
  'fixing-renewed',
  'fixing-added',
  'edge-trim',
  'burr-filed',
  'screw-shortened',
  'rerouted',
  'bracket-moved',
  'foam-pad',
  'sleeve',
  'split-tube-and-tape',
  'tie-and-wrap',
  'saddle-clamp',
  'grommet',
  'drain-opened',
  'slack-given',
  'load-moved',
] as const;
export const rubCureSchema = z.enum(rubCures);
export type RubCure = z.infer<typeof rubCureSchema>;

/** Cures that take the place of a fixing that was missing. */
export const fixingCures: ReadonlySet<RubCure> = new Set([
  'fixing-renewed',
  'fixing-added',
  'tie-and-wrap',
  'saddle-clamp',
]);
