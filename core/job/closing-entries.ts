import { z } from 'zod';
import { cautionSchema } from '../map/kinds.ts';
import { idSchema } from '../quantity/id.ts';
import {
  alongResultSchema,
  clockKindSchema,
  closeOutcomeSchema,
  damageCauseSchema,
  damageTypeSchema,
  findingResultSchema,
  proofCheckSchema,
} from './closing-words.ts';
import { meterSchema } from './meter-record.ts';
import { carStateSchema, readingSchema, stretchSchema } from './reading.ts';
import { repairPracticeSchema, rubCureSchema } from './repair-practice-table.ts';

const head = { id: idSchema('entry'), at: z.iso.datetime({ offset: true }) };
const note = z.string().max(4_000);
const sha256 = z.string().regex(/^[0-9a-f]{64}$/);

/** A photo by the SHA-256 of its kept picture. */
export const photoSchema = z.strictObject({
  sha256,
  /** The camera's own file, where it was kept as well. */
  originalSha256: sha256.optional(),
  caption: z.string().max(400),
});
export type Photo = z.infer<typeof photoSchema>;
const photos = z.array(photoSchema).max(40);

/** Money and time, in stages, and the clocks of the bill. */
export const agreedEntrySchema = z.strictObject({
  ...head,
  type: z.literal('agreed'),
  /** What the customer agreed to is counted in this; each entry adds to those before it. */
  measure: z.enum(['minutes', 'amount']),
  adds: z.number().min(0).max(1_000_000),
  /** Asked for after the first limit. */
  extension: z.boolean(),
  agreedBy: z.string().max(200),
  note,
});

/**
 * One clock runs at a time: a start stops the one before. `adjust` adds minutes (or takes them off) where a
 * clock was forgotten.
 */
export const timeEntrySchema = z.strictObject({
  ...head,
  type: z.literal('time'),
  clock: clockKindSchema,
  action: z.enum(['start', 'stop', 'adjust']),
  /** With `adjust` only. */
  minutes: z.number().min(-100_000).max(100_000).optional(),
});

/** What can hurt when a test is done, whatever panel is off: a live wire, current put in, things that move. */
export const testCautions = ['live-wire', 'current-in', 'moving-parts'] as const;
export type TestCaution = (typeof testCautions)[number];

export const cautionReadEntrySchema = z.strictObject({
  ...head,
  type: z.literal('caution-read'),
  /** Of panels; with none, `tests` names at least one. */
  cautions: z.array(cautionSchema).max(20),
  tests: z.array(z.enum(testCautions)).max(10).optional(),
});

/** What was found at a place, and whether it is the cause. */
export const findingEntrySchema = z.strictObject({
  ...head,
  type: z.literal('finding'),
  stretches: z.array(stretchSchema).min(1).max(200),
  /** The plug or other part it is in; the stretches then say where it sits. Absent: in the wire. */
  partNodeId: idSchema('node').optional(),
  damage: damageTypeSchema,
  /** The damaged wire; null when it is not among the map's circuits. */
  circuitId: idSchema('circuit').nullable(),
  cause: damageCauseSchema,
  result: findingResultSchema,
  photos,
  note,
});

export const proofOfCauseEntrySchema = z.strictObject({
  ...head,
  type: z.literal('proof-of-cause'),
  findingId: idSchema('entry'),
  damageSeen: z.boolean(),
  onFaultyCircuit: z.boolean(),
  /** Moving it, or holding it off what it touches, makes the fault come and go. Null: wiring that is not moved. */
  comesAndGoes: z.boolean().nullable(),
  note,
});

export const repairEntrySchema = z.strictObject({
  ...head,
  type: z.literal('repair'),
  findingId: idSchema('entry'),
  practices: z.array(repairPracticeSchema).max(20),
  joints: z.number().int().min(0).max(1_000),
  /** What stops it rubbing now. */
  cures: z.array(rubCureSchema).max(20),
  /** Whether the vehicle maker allows a repair of this wiring; never assumed. */
  makerAllows: z.enum(['yes', 'no', 'not-asked']),
  photos,
  note,
});

export const lookedAlongEntrySchema = z.strictObject({
  ...head,
  type: z.literal('looked-along'),
  findingId: idSchema('entry'),
  eachWayMm: z.number().min(0).max(10_000),
  beside: alongResultSchema,
  /** The same place on the other side, or at the next fixing. */
  twin: alongResultSchema,
  note,
});

export const proofEntrySchema = z.strictObject({
  ...head,
  type: z.literal('proof'),
  check: proofCheckSchema,
  /** The entry this test repeats. */
  repeats: idSchema('entry').optional(),
  /** What it showed after the repair. */
  reading: readingSchema.optional(),
  state: carStateSchema.optional(),
  meter: meterSchema.optional(),
  /** Current that a drop test still drove in; none is 0, which no reading can say. */
  amps: z.number().min(0).max(20).optional(),
  good: z.boolean(),
  note,
});

/** The fault is still there after a repair: from here on only what is read after it counts. */
export const searchOnEntrySchema = z.strictObject({ ...head, type: z.literal('search-on'), note });

export const closeEntrySchema = z.strictObject({
  ...head,
  type: z.literal('close'),
  outcome: closeOutcomeSchema,
  /** Why, when it was not proved. */
  reason: note,
  advice: note,
});

/** Everything that is entered between the find and the paid bill. */
export const closingEntrySchemas = [
  agreedEntrySchema,
  timeEntrySchema,
  cautionReadEntrySchema,
  findingEntrySchema,
  proofOfCauseEntrySchema,
  repairEntrySchema,
  lookedAlongEntrySchema,
  proofEntrySchema,
  searchOnEntrySchema,
  closeEntrySchema,
] as const;
