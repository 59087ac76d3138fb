import { createHash } from 'node:crypto';
import { type Connection, statement } from './connection.ts';

/** The bytes of a photo or scan. */
export interface KeptPicture {
  readonly mediaType: string;
  readonly bytes: Buffer;
}

/** Keeps a picture once, however often it is brought, and gives the SHA-256 it is named by. */
export function keepPicture(connection: Connection, mediaType: string, bytes: Uint8Array): string {
  const sha256 = createHash('sha256').update(bytes).digest('hex');
  statement(
    connection,
    `INSERT INTO picture_bytes (sha256, media_type, bytes) VALUES (?, ?, ?) ON CONFLICT (sha256) DO NOTHING`,
  ).run(sha256, mediaType, bytes);
  return sha256;
}

/** A kept picture by its SHA-256; null when it is not here. */
export function readPicture(connection: Connection, sha256: string): KeptPicture | null {
  const sql = 'SELECT media_type AS mediaType, bytes FROM picture_bytes WHERE sha256 = ?';
  return statement<KeptPicture>(connection, sql).get(sha256) ?? null;
}

/** Whether a picture is kept, without reading its bytes. */
export function hasPicture(connection: Connection, sha256: string): boolean {
  return statement(connection, 'SELECT 1 FROM picture_bytes WHERE sha256 = ?').get(sha256) !== undefined;
}
