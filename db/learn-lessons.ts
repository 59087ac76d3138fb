import type { PastJob } from '#core/history/past-jobs.ts';
import { pastJob } from '#core/job/past-job.ts';
import { mapFromExchange } from '#core/map/exchange.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { assert } from '#core/quantity/assert.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { ok } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { inOneTransaction } from './in-one-transaction.ts';
import { readJob } from './job-store.ts';
import { lessonLevels } from './lesson-store.ts';
import { readPinnedMap } from './map-snapshot-store.ts';

interface JobToLearn {
  readonly id: JobId;
  readonly map_id: MapId;
  readonly map_revision: number;
}

/**
 * Works out what closed jobs teach where that is not kept yet, `most` of them at a time, those of the map
 * named first; gives how many are left. A job whose record changes is forgotten and worked out again.
 */
export function learnFromClosed(connection: Connection, mapId: MapId, most: number): number {
  const waiting = statement<JobToLearn>(
    connection,
    `SELECT id, map_id, map_revision FROM job WHERE stage = 'closed' AND lesson IS NULL
     ORDER BY map_id <> ?, map_id, map_revision, id LIMIT ?`,
  ).all(mapId, most);
  if (waiting.length === 0) return 0;
  let map: MapDocument | null = null;
  inOneTransaction(connection, () => {
    for (const each of waiting) {
      if (map?.id !== each.map_id || map.revision !== each.map_revision) {
        const pinned = readPinnedMap(connection, each.map_id, each.map_revision);
        assert(pinned, `${each.id} has lost its pinned map`);
        map = mapFromExchange(pinned);
      }
      const job = readJob(connection, each.id);
      assert(job, `${each.id} is in the list but not in the store`);
      keepLesson(connection, each, pastJob(map, job));
    }
    return ok(waiting.length);
  });
  return statement<{ left: number }>(
    connection,
    `SELECT count(*) AS left FROM job WHERE stage = 'closed' AND lesson IS NULL`,
  ).get()?.left as number;
}

function keepLesson(connection: Connection, { id, map_id }: JobToLearn, lesson: PastJob | null): void {
  if (lesson) {
    const insert = statement(
      connection,
      'INSERT INTO lesson_amount (job_id, map_id, level, key, found, expected) VALUES (?, ?, ?, ?, ?, ?)',
    );
    for (const level of lessonLevels) {
      const found: Readonly<Record<string, number>> = lesson.found[level];
      const expected: Readonly<Record<string, number>> = lesson.expected[level];
      for (const key of new Set([...Object.keys(found), ...Object.keys(expected)])) {
        insert.run(id, map_id, level, key, found[key] ?? 0, expected[key] ?? 0);
      }
    }
  }
  statement(connection, 'UPDATE job SET lesson = ? WHERE id = ?').run(lesson ? 'some' : 'none', id);
}
