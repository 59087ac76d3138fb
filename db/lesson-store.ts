import type { PastSum, Tally } from '#core/history/past-jobs.ts';
import type { PastSums } from '#core/history/teach.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { type Connection, statement } from './connection.ts';

/** The levels of a tally, as the table names them. */
export const lessonLevels = ['causes', 'rubSpotKinds', 'rubSpots'] as const;

/** Throws away what a job taught: its record has changed. */
export function forgetLesson(connection: Connection, jobId: JobId): void {
  statement(connection, 'DELETE FROM lesson_amount WHERE job_id = ?').run(jobId);
  statement(connection, 'UPDATE job SET lesson = NULL WHERE id = ?').run(jobId);
}

/** The map a job is on; null when the job is not here. */
export function mapOfJob(connection: Connection, jobId: JobId): MapId | null {
  const row = statement<{ mapId: MapId }>(connection, 'SELECT map_id AS mapId FROM job WHERE id = ?').get(
    jobId,
  );
  return row?.mapId ?? null;
}

interface AmountRow {
  readonly level: (typeof lessonLevels)[number];
  readonly key: string;
  readonly found: number;
  readonly expected: number;
}

/**
 * What closed jobs taught, on every map and on this one; single spots only on this one, for they mean nothing
 * elsewhere. The job named does not learn from itself.
 */
export function sumLessons(connection: Connection, mapId: MapId, except: JobId): PastSums {
  const all = statement<AmountRow>(
    connection,
    `SELECT level, key, sum(found) AS found, sum(expected) AS expected FROM lesson_amount
     WHERE level <> 'rubSpots' AND job_id <> ? GROUP BY level, key`,
  ).all(except);
  const onMap = statement<AmountRow>(
    connection,
    `SELECT level, key, sum(found) AS found, sum(expected) AS expected FROM lesson_amount
     WHERE map_id = ? AND job_id <> ? GROUP BY level, key`,
  ).all(mapId, except);
  const jobs = statement<{ jobs: number; onMap: number | null }>(
    connection,
    `SELECT count(*) AS jobs, sum(map_id = ?) AS onMap FROM job WHERE lesson = 'some' AND id <> ?`,
  ).get(mapId, except);
  return {
    all: summed(jobs?.jobs ?? 0, all),
    onMap: summed(jobs?.onMap ?? 0, onMap),
  };
}

function summed(jobs: number, rows: readonly AmountRow[]): PastSum {
  const tally = (amount: (row: AmountRow) => number): Tally =>
    Object.fromEntries(
      lessonLevels.map((level) => [
        level,
        Object.fromEntries(
          rows.flatMap((row) => (row.level === level && amount(row) !== 0 ? [[row.key, amount(row)]] : [])),
        ),
      ]),
    ) as unknown as Tally;
  return { jobs, found: tally(({ found }) => found), expected: tally(({ expected }) => expected) };
}
