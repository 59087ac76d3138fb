import { z } from 'zod';

/** The four clocks of a bill; the finding is charged apart from the repair. */
export const clockKinds = ['find', 'reach', 'repair', 'refit'] as const;
export const clockKindSchema = z.enum(clockKinds);
export type ClockKind = z.infer<typeof clockKindSchema>;

/** What is wrong with a wire, in trade words. Common practice, no source. */
export const damageTypes = [
  'chafed',
  'scuffed',
  'pinched',
  'cut',
  'broken-inside',
  'heat-burned',
  'corroded',
  'loose-terminal',
  'gnawed',
  'pierced',
  'wet-joint',
  'none',
] as const;
export const damageTypeSchema = z.enum(damageTypes);
export type DamageType = z.infer<typeof damageTypeSchema>;

/** Why a wire was damaged, in trade words. Common practice, no source. */
export const damageCauses = [
  'edge-touches',
  'fastener-through',
  'fixing-missing',
  'misrouted',
  'too-short',
  'pinched-on-refit',
  'moves-with-hinge',
  'moves-with-seat',
  'heat-nearby',
  'water-in',
  'crushed-by-load',
  'added-wiring',
  'gnawed',
  'earlier-repair',
  'not-known',
] as const;
export const damageCauseSchema = z.enum(damageCauses);
export type DamageCause = z.infer<typeof damageCauseSchema>;

/** What a find turned out to be; only the first ends a search. */
export const findingResults = ['proved-cause', 'damaged-not-cause', 'sound'] as const;
export const findingResultSchema = z.enum(findingResults);
export type FindingResult = z.infer<typeof findingResultSchema>;

/** What a second look beside the find, or at its twin, showed. */
export const alongResults = ['sound', 'damaged', 'not-seen', 'none-there'] as const;
export const alongResultSchema = z.enum(alongResults);
export type AlongResult = z.infer<typeof alongResultSchema>;

/** How a job ends. */
export const closeOutcomes = ['proved', 'not-found', 'customer-stopped'] as const;
export const closeOutcomeSchema = z.enum(closeOutcomes);
export type CloseOutcome = z.infer<typeof closeOutcomeSchema>;

/** What is tried again after a repair. */
export const proofChecks = ['reading', 'code', 'function', 'move', 'airbag-lamp'] as const;
export const proofCheckSchema = z.enum(proofChecks);
export type ProofCheck = z.infer<typeof proofCheckSchema>;
