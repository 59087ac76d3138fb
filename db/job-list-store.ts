import type { JobId, MapId } from '#core/quantity/id.ts';
import { type Connection, statement } from './connection.ts';
import type { JobProgress } from './job-progress.ts';

/** One line of the job list. */
export interface JobLine {
  readonly id: JobId;
  readonly mapId: MapId;
  readonly mapName: string;
  readonly plate: string;
  readonly complaint: string;
  readonly openedAt: string;
  readonly changedAt: string;
  readonly stage: JobProgress['stage'];
  readonly minutesSpent: number;
}

/** A job whose map was removed shows the name the map had. */
const lines = (
  ...more: string[]
): string => `SELECT ${['job.id', ...more].join(', ')}, job.map_id AS mapId, coalesce(map.name, map_snapshot.name) AS mapName,
    job.head ->> '$.vehicle.plate' AS plate, job.head ->> '$.complaint' AS complaint,
    job.opened_at AS openedAt, job.changed_at AS changedAt,
    job.stage, job.minutes_spent AS minutesSpent
  FROM job
  JOIN map_snapshot ON map_snapshot.map_id = job.map_id AND map_snapshot.revision = job.map_revision
  LEFT JOIN map ON map.id = job.map_id`;

/** Every job, last worked on first. */
export function listJobs(connection: Connection): JobLine[] {
  return statement<JobLine>(connection, `${lines()} ORDER BY job.changed_at DESC, job.id`).all();
}

/** The jobs that are not closed, last worked on first. */
export function listOpenJobs(connection: Connection): JobLine[] {
  const sql = `${lines()} WHERE job.stage <> 'closed' ORDER BY job.changed_at DESC, job.id`;
  return statement<JobLine>(connection, sql).all();
}

/** The lines of jobs by their ids, last worked on first, each with what is kept for finding it again. */
export function readRecalledLines(
  connection: Connection,
  jobIds: readonly JobId[],
): (JobLine & { readonly recall: string })[] {
  return statement<JobLine & { recall: string }>(
    connection,
    `${lines('job.recall')} WHERE job.id IN (SELECT value FROM json_each(?))
     ORDER BY job.changed_at DESC, job.id`,
  ).all(JSON.stringify(jobIds));
}

/** The closed jobs of a map, last worked on first. */
export function closedJobsOf(connection: Connection, mapId: MapId): JobId[] {
  const sql = `SELECT id FROM job WHERE map_id = ? AND stage = 'closed' ORDER BY changed_at DESC, id`;
  return statement<{ id: JobId }>(connection, sql)
    .all(mapId)
    .map(({ id }) => id);
}

/** The name of every map that jobs are on: its own, or the one it had when it was removed. */
export function mapNamesOfJobs(connection: Connection): Map<MapId, string> {
  const rows = statement<{ mapId: MapId; name: string }>(
    connection,
    `SELECT map_snapshot.map_id AS mapId, coalesce(map.name, map_snapshot.name) AS name
     FROM map_snapshot LEFT JOIN map ON map.id = map_snapshot.map_id ORDER BY map_snapshot.revision`,
  ).all();
  return new Map(rows.map(({ mapId, name }) => [mapId, name]));
}
