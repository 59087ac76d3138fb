import type { Transaction } from '#core/map/transaction.ts';
import type { MapId } from '#core/quantity/id.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';

/** One state a map has been in and can be opened in again. */
export interface MapRevision {
  readonly revision: number;
  /** When the edit that led to it was made; null for a state that came whole. */
  readonly at: string | null;
  /** Key of the edit's label in the language table; null for a state that came whole. */
  readonly label: string | null;
  readonly origin: Transaction['origin'] | null;
  /** Jobs that were opened on it. */
  readonly jobs: number;
}

/**
 * Every state of a map that can be opened again, newest first: the one it came in with, one for each
 * edit, undo and redo, and those that only jobs still keep. `not-found` for a map of which there is
 * neither. A removed map still has the states its jobs keep.
 */
export function listRevisions(connection: Connection, mapId: MapId): Result<MapRevision[]> {
  const rows = statement<MapRevision>(
    connection,
    `WITH state (revision, at, label, origin) AS (
       SELECT revision, changed_at, label, origin FROM map_transaction WHERE map_id = @map
       UNION ALL SELECT first_revision, NULL, NULL, NULL FROM map WHERE id = @map
       UNION ALL SELECT revision, NULL, NULL, NULL FROM map_snapshot WHERE map_id = @map
         AND revision NOT IN (SELECT revision FROM map_transaction WHERE map_id = @map)
         AND revision NOT IN (SELECT first_revision FROM map WHERE id = @map)
     )
     SELECT revision, at, label, origin,
       (SELECT count(*) FROM job WHERE job.map_id = @map AND job.map_revision = state.revision) AS jobs
     FROM state ORDER BY revision DESC`,
  ).all({ map: mapId });
  return rows.length > 0 ? ok(rows) : fail({ code: 'not-found', thing: mapId });
}
