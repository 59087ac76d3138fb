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

/** Every job, last worked on first. A job whose map was removed shows the name the map had. */
export function listJobs(connection: Connection): JobLine[] {
  return statement<JobLine>(
    connection,
    `SELECT job.id, job.map_id AS mapId, coalesce(map.name, map_snapshot.name) AS mapName,
       job.head ->> '$.vehicle.plate' AS plate, job.head ->> '$.complaint' AS complaint,
       job.opened_at AS openedAt, job.changed_at AS changedAt,
       job.stage, job.minutes_spent AS minutesSpent
     FROM job
     JOIN map_snapshot ON map_snapshot.map_id = job.map_id AND map_snapshot.revision = job.map_revision
     LEFT JOIN map ON map.id = job.map_id
     ORDER BY job.changed_at DESC, job.id`,
  ).all();
}
