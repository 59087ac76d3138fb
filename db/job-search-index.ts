import type { JobFacts } from '#core/job/job-facts.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { ok } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { inOneTransaction } from './in-one-transaction.ts';
import { plainLetters, recaller, textEnd } from './job-recall-store.ts';

interface JobToIndex {
  readonly id: JobId;
  readonly mapId: MapId;
  readonly mapName: string;
  readonly changedAt: string;
}

/**
 * Puts jobs that changed since into the index a search looks in, `most` of them; gives how many are left. Which
 * ones changed is noted by triggers of the store, in the transaction of the change.
 */
export function indexChangedJobs(connection: Connection, most: number): number {
  const waiting = statement<JobToIndex>(
    connection,
    `SELECT job.id, job.map_id AS mapId, coalesce(map.name, map_snapshot.name) AS mapName,
       job.changed_at AS changedAt
     FROM job_to_index
     CROSS JOIN job ON job.id = job_to_index.job_id
     JOIN map_snapshot ON map_snapshot.map_id = job.map_id AND map_snapshot.revision = job.map_revision
     LEFT JOIN map ON map.id = job.map_id
     ORDER BY job_to_index.map_id, job_to_index.job_id LIMIT ?`,
  ).all(most);
  if (waiting.length === 0) return 0;
  inOneTransaction(connection, () => {
    const recall = recaller(connection);
    const drop = statement(connection, 'DELETE FROM job_search WHERE job_id = ?');
    const keep = statement(
      connection,
      'INSERT INTO job_search (job_id, map_id, changed_at, words, codes) VALUES (?, ?, ?, ?, ?)',
    );
    const done = statement(connection, 'DELETE FROM job_to_index WHERE map_id = ? AND job_id = ?');
    for (const { id, mapId, mapName, changedAt } of waiting) {
      const { facts, text } = recall(id);
      drop.run(id);
      keep.run(
        id,
        mapId,
        changedAt,
        `${text} ${plainLetters(mapName)}${endMark}`,
        codesOf(facts).map(fenced).join(''),
      );
      done.run(mapId, id);
    }
    return ok(null);
  });
  return statement<{ left: number }>(connection, 'SELECT count(*) AS left FROM job_to_index').get()
    ?.left as number;
}

/** Causes and kinds of damage found on a job. */
const codesOf = ({ found }: JobFacts): readonly string[] => [
  ...new Set([...found.flatMap(({ cause }) => cause ?? []), ...found.flatMap(({ damage }) => damage ?? [])]),
];

/** Two letters nobody writes end each text, so that the last letters of it too begin three in a row. */
const endMark = textEnd.repeat(2);

/** A code between marks that are in no code, so that one is never found within another. */
export const fenced = (code: string): string => `|${code}|`;
