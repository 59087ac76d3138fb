import { createHash } from 'node:crypto';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { storeProblem } from './store-problem.ts';

/** The bytes of a photo or scan. */
export interface KeptPicture {
  readonly mediaType: string;
  readonly bytes: Buffer;
}

const nameOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Keeps a picture once, however often it is brought, and gives the SHA-256 it is named by. */
export function keepPicture(connection: Connection, mediaType: string, bytes: Uint8Array): string {
  const sha256 = nameOf(bytes);
  statement(
    connection,
    `INSERT INTO picture_bytes (sha256, media_type, bytes) VALUES (?, ?, ?) ON CONFLICT (sha256) DO NOTHING`,
  ).run(sha256, mediaType, bytes);
  return sha256;
}

/**
 * A kept picture by its SHA-256. `not-found` when it is not here, `store-damaged` when its bytes cannot be read
 * or are not those it was named by: a start does not look through the pictures, so it is told when one is met.
 */
export function readPicture(connection: Connection, sha256: string): Result<KeptPicture> {
  const sql = 'SELECT media_type AS mediaType, bytes FROM picture_bytes WHERE sha256 = ?';
  try {
    const kept = statement<KeptPicture>(connection, sql).get(sha256);
    if (!kept) return fail({ code: 'not-found', thing: sha256 });
    if (nameOf(kept.bytes) === sha256) return ok(kept);
    return fail({ code: 'store-damaged', detail: 'a picture is not as it was kept' });
  } catch (error) {
    const problem = storeProblem(error);
    if (!problem) throw error;
    return fail(problem);
  }
}

/** Whether a picture is kept, without reading its bytes. */
export function hasPicture(connection: Connection, sha256: string): boolean {
  return statement(connection, 'SELECT 1 FROM picture_bytes WHERE sha256 = ?').get(sha256) !== undefined;
}
