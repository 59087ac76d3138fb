import { createHash } from 'node:crypto';
import { unpackJson } from '../packed-json.ts';
import type { Row } from './read-rows.ts';

/** A table whose rows are saved, and what a sound row of it is. What can be worked out again is left out. */
export interface KeptTable {
  readonly name: string;
  readonly withRowid: boolean;
  /** Columns left to be worked out again. */
  readonly derived: readonly string[];
  isSound(row: Row): boolean;
}

/** In the order in which rows may refer to one another. */
export const keptTables: readonly KeptTable[] = [
  plain('map', false, ['picture']),
  { ...plain('map_record', false), isSound: (row) => isJson(row.body) },
  {
    ...plain('map_transaction', true),
    isSound: (row) => isJson(row.selections) && (row.patch === null || isPacked(row.patch)),
  },
  { ...plain('map_snapshot', true), isSound: (row) => isPacked(row.document) },
  { ...plain('job', true, ['recall', 'lesson']), isSound: (row) => isJson(row.head) },
  { ...plain('job_entry', true), isSound: (row) => isJson(row.body) },
  { ...plain('picture_bytes', true), isSound: isOwnPicture },
  plain('place_state', false),
  plain('sample_offered', false),
];

function plain(name: string, withRowid: boolean, derived: readonly string[] = []): KeptTable {
  return { name, withRowid, derived, isSound: () => true };
}

function isJson(text: unknown): boolean {
  try {
    return typeof text === 'string' && typeof JSON.parse(text) === 'object';
  } catch {
    return false;
  }
}

function isPacked(bytes: unknown): boolean {
  try {
    return bytes instanceof Uint8Array && typeof unpackJson(bytes) === 'object';
  } catch {
    return false;
  }
}

function isOwnPicture({ sha256, bytes }: Row): boolean {
  return bytes instanceof Uint8Array && createHash('sha256').update(bytes).digest('hex') === sha256;
}
