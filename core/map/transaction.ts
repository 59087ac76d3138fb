import { z } from 'zod';
import type { MapRecord } from './map-document.ts';
import type { Patch } from './patch.ts';
import { mapDetailsSchema, schemaOfKind } from './records.ts';

/** Ids of what is picked on the board, oldest first. */
export type Selection = readonly string[];

/** A change as the user made it: the patch, the words for it, and what was picked around it. */
export interface Transaction {
  /** Key of the label in the language table, such as `edit.moveNode`. */
  readonly label: string;
  readonly origin: 'user' | 'undo' | 'redo' | 'import';
  readonly patch: Patch;
  readonly selectionBefore: Selection;
  readonly selectionAfter: Selection;
}

/** Any whole record of a map, told apart by its id. */
export const mapRecordSchema: z.ZodType<MapRecord> = z.union([
  mapDetailsSchema,
  ...Object.values(schemaOfKind),
]);

export const patchSchema: z.ZodType<Patch> = z.strictObject({
  added: z.array(mapRecordSchema),
  removed: z.array(mapRecordSchema),
  changed: z.array(z.tuple([mapRecordSchema, mapRecordSchema])),
});

export const transactionSchema: z.ZodType<Transaction> = z.strictObject({
  label: z.string().max(80),
  origin: z.enum(['user', 'undo', 'redo', 'import']),
  patch: patchSchema,
  selectionBefore: z.array(z.string()),
  selectionAfter: z.array(z.string()),
});
