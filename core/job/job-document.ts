import { z } from 'zod';
import { recentWorks, symptoms } from '../history/recent-work-table.ts';
import { idSchema } from '../quantity/id.ts';
import { closingEntrySchemas } from './closing-entries.ts';
import { meterSchema } from './meter-record.ts';
import { carStateSchema, readingSchema, stretchSchema } from './reading.ts';
import { wishEntrySchemas } from './wish-entries.ts';

export const jobFormat = 'undertrim.job';
export const jobVersion = 1;

/**
 * What the control unit or the technician says is wrong, in the public failure-type vocabulary
 * (SAE J2012 failure type bytes; wording from memory of the standard).
 */
export const failureTypes = [
  'circuit-short-to-ground',
  'circuit-short-to-battery',
  'circuit-open',
  'circuit-short-to-ground-or-open',
  'circuit-short-to-battery-or-open',
  'circuit-voltage-below-threshold',
  'circuit-voltage-above-threshold',
  'circuit-current-below-threshold',
  'circuit-current-above-threshold',
  'circuit-resistance-below-threshold',
  'circuit-resistance-above-threshold',
  'circuit-intermittent',
  'signal-stuck-low',
  'signal-stuck-high',
  'signal-erratic',
  'not-known',
] as const;
export const failureTypeSchema = z.enum(failureTypes);
export type FailureType = z.infer<typeof failureTypeSchema>;

/** What a look at a stretch showed. */
export const inspectionResultSchema = z.enum(['seen-sound', 'seen-damaged-not-cause', 'found']);
export type InspectionResult = z.infer<typeof inspectionResultSchema>;

const at = z.iso.datetime({ offset: true });
const head = { id: idSchema('entry'), at };
const note = z.string().max(4_000);

/** One line of a job's record. Nothing is overwritten: a wrong line is taken back by a later one. */
export const jobEntrySchema = z.discriminatedUnion('type', [
  z.strictObject({
    ...head,
    type: z.literal('reading'),
    reading: readingSchema,
    state: carStateSchema,
    /** What it was measured with; an ordinary hand meter when absent. */
    meter: meterSchema.optional(),
    note,
  }),
  z.strictObject({
    ...head,
    type: z.literal('inspection'),
    stretches: z.array(stretchSchema).min(1).max(200),
    /** Plugs parted and looked into as well. Absent: none. */
    nodeIds: z.array(idSchema('node')).max(50).optional(),
    /** The plug or other part the damage is in; the stretches then say where it sits. Absent: in the wire. */
    partNodeId: idSchema('node').optional(),
    result: inspectionResultSchema,
    /** How well one could see, 0 to 1: the chance that damage there would have been noticed. */
    lookQuality: z.number().gt(0).lte(1),
    note,
  }),
  z.strictObject({
    ...head,
    type: z.literal('panel-off'),
    panelId: idSchema('panel'),
  }),
  z.strictObject({
    ...head,
    type: z.literal('panel-on'),
    panelId: idSchema('panel'),
  }),
  z.strictObject({ ...head, type: z.literal('note'), text: note }),
  z.strictObject({
    ...head,
    type: z.literal('take-back'),
    entryId: idSchema('entry'),
  }),
  ...closingEntrySchemas,
  ...wishEntrySchemas,
]);
export type JobEntry = z.infer<typeof jobEntrySchema>;
/** The entries of one type. */
export type EntryOf<T extends JobEntry['type']> = Extract<JobEntry, { type: T }>;

/** One visit of one vehicle. */
export const jobSchema = z.strictObject({
  format: z.literal(jobFormat),
  version: z.literal(jobVersion),
  id: idSchema('job'),
  mapId: idSchema('map'),
  /** The map as it stood when the job was opened; later edits of the map do not reach this job. */
  mapRevision: z.number().int().min(0),
  openedAt: at,
  vehicle: z.strictObject({
    /** Plate or stock number. */
    plate: z.string().max(40),
    odometer: z.number().min(0).max(10_000_000).nullable(),
    odometerUnit: z.enum(['km', 'mi']),
  }),
  complaint: z.string().max(2_000),
  failureType: failureTypeSchema,
  /** The circuit under search; null until chosen. */
  circuitId: idSchema('circuit').nullable(),
  alsoFailingCircuitIds: z.array(idSchema('circuit')).max(200),
  workingCircuitIds: z.array(idSchema('circuit')).max(200),
  /** What was fitted, repaired or disturbed lately. Absent: nobody asked. */
  recentWork: z.array(z.enum(recentWorks)).max(recentWorks.length).optional(),
  /** When the fault shows. Absent: nobody asked. */
  symptoms: z.array(z.enum(symptoms)).max(symptoms.length).optional(),
  /** A closed job handed to another workshop without its customer. Absent: a job of one's own. */
  handedOn: z.literal(true).optional(),
  entries: z.array(jobEntrySchema).max(20_000),
});
export type Job = z.infer<typeof jobSchema>;

/** What is written down when the car comes in; all of it can be put right later. */
export type Intake = Pick<
  Job,
  | 'vehicle'
  | 'complaint'
  | 'failureType'
  | 'circuitId'
  | 'alsoFailingCircuitIds'
  | 'workingCircuitIds'
  | 'recentWork'
  | 'symptoms'
>;
