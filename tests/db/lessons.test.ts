import { describe, expect, test } from 'vitest';
import { teach, teachSums } from '#core/history/teach.ts';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { pastJob } from '#core/job/past-job.ts';
import { mapToExchange } from '#core/map/exchange.ts';
import type { JobId } from '#core/quantity/id.ts';
import type { Connection } from '#db/connection.ts';
import { addJob, appendEntries, changeIntake, readJob } from '#db/job-store.ts';
import { learnFromClosed } from '#db/learn-lessons.ts';
import { sumLessons } from '#db/lesson-store.ts';
import { addMap } from '#db/map-store.ts';
import { provedAt } from '#tests/core/job/proved-at.ts';
import { sample } from '#tests/sample.ts';
import { openFreshStore } from './open-fresh-store.ts';

const at = '2026-01-05T10:00:00.000Z';
const find = provedAt([{ segmentId: 'segment:middle', fromMm: 200, toMm: 300 }]);
const [look, described] = find;
const closing: JobEntry = { id: 'entry:close', at, type: 'close', outcome: 'proved', reason: '', advice: '' };
const otherMap = { ...sample.map, id: 'map:other' as const };

function shop(): {
  readonly connection: Connection;
  readonly add: (id: JobId, ...entries: JobEntry[]) => Job;
} {
  const { connection } = openFreshStore();
  addMap(connection, mapToExchange(sample.map), at);
  addMap(connection, mapToExchange(otherMap), at);
  const add = (id: JobId, ...entries: JobEntry[]): Job => {
    const job: Job = { ...sample.job, id, entries };
    expect(addJob(connection, job, mapToExchange(sample.map)).ok).toBe(true);
    return job;
  };
  return { connection, add };
}

const sums = (connection: Connection, except: JobId = 'job:none') => {
  expect(learnFromClosed(connection, 'map:tiny', 100)).toBe(0);
  return sumLessons(connection, 'map:tiny', except);
};

describe('what closed jobs teach, as the store sums it', () => {
  test('the sums teach what the jobs one by one would', () => {
    const { connection, add } = shop();
    const jobs = [add('job:a', ...find, closing), add('job:b', ...find, closing)];
    const learnt = jobs.flatMap((job) => pastJob(sample.map, job) ?? []);
    expect(learnt).toHaveLength(2);
    const history = teachSums(sums(connection), sample.map);
    const oneByOne = teach(learnt, sample.map);
    expect(history.jobsOnMap).toBe(2);
    expect(history.rubSpotFinds).toEqual(oneByOne.rubSpotFinds);
    expect(history.rubSpotFactor.get('rub-spot:edge')).toBeCloseTo(
      oneByOne.rubSpotFactor.get('rub-spot:edge') ?? 0,
      9,
    );
    for (const [kind, factor] of Object.entries(oneByOne.rubSpotKindFactor)) {
      expect(history.rubSpotKindFactor[kind as keyof typeof history.rubSpotKindFactor]).toBeCloseTo(
        factor,
        9,
      );
    }
  });

  test('an open job teaches nothing, and no job learns from itself', () => {
    const { connection, add } = shop();
    add('job:open', ...find);
    expect(sums(connection).all.jobs).toBe(0);
    add('job:closed', ...find, closing);
    expect(sums(connection).onMap.jobs).toBe(1);
    expect(sums(connection, 'job:closed')).toMatchObject({
      all: { jobs: 0, found: { rubSpotKinds: {} } },
      onMap: { jobs: 0, found: { rubSpots: {} } },
    });
  });

  test('closing teaches, taking the end back unteaches, and a wrong find taken back teaches anew', () => {
    const { connection, add } = shop();
    add('job:a', ...find);
    const finds = () => sums(connection).onMap.found.rubSpots['rub-spot:edge'] ?? 0;
    expect(finds()).toBe(0);
    expect(appendEntries(connection, 'job:a', 3, [closing], at).ok).toBe(true);
    expect(finds()).toBeGreaterThan(0.5);
    const reopen: JobEntry = { id: 'entry:r', at, type: 'take-back', entryId: closing.id };
    expect(appendEntries(connection, 'job:a', 4, [reopen], at).ok).toBe(true);
    expect(finds()).toBe(0);
    const wrong: JobEntry = { id: 'entry:w', at, type: 'take-back', entryId: described.id };
    const sound: JobEntry = { ...look, id: 'entry:s', result: 'seen-sound' };
    const end: JobEntry = { ...closing, id: 'entry:e', outcome: 'not-found', reason: 'nothing seen' };
    expect(appendEntries(connection, 'job:a', 5, [wrong, sound, end], at).ok).toBe(true);
    expect(finds()).toBe(0);
    expect(sums(connection).onMap.expected.rubSpots['rub-spot:edge']).toBeGreaterThan(0);
  });

  test('other maps share kinds of cause and of rub spot, never single spots', () => {
    const { connection, add } = shop();
    const elsewhere: Job = { ...sample.job, id: 'job:else', mapId: 'map:other', entries: [...find, closing] };
    expect(addJob(connection, elsewhere, mapToExchange(otherMap)).ok).toBe(true);
    add('job:a', ...find, closing);
    const { all, onMap } = sums(connection);
    expect([all.jobs, onMap.jobs]).toEqual([2, 1]);
    expect(all.found.rubSpots).toEqual({});
    expect(all.found.rubSpotKinds['raw-edge']).toBeCloseTo(
      2 * (onMap.found.rubSpotKinds['raw-edge'] ?? 0),
      9,
    );
  });

  test('jobs not yet worked out are worked out a few at a time, those of this map first', () => {
    const { connection, add } = shop();
    const elsewhere: Job = { ...sample.job, id: 'job:0', mapId: 'map:other', entries: [...find, closing] };
    expect(addJob(connection, elsewhere, mapToExchange(otherMap)).ok).toBe(true);
    for (const id of ['job:a', 'job:b'] as const) add(id, ...find, closing);
    expect(learnFromClosed(connection, 'map:tiny', 2)).toBe(1);
    expect(sumLessons(connection, 'map:tiny', 'job:none')).toMatchObject({
      all: { jobs: 2 },
      onMap: { jobs: 2 },
    });
    expect(learnFromClosed(connection, 'map:tiny', 2)).toBe(0);
    expect(sumLessons(connection, 'map:tiny', 'job:none').all.jobs).toBe(3);
  });

  test('another circuit at intake teaches anew, and the answers at intake are kept', () => {
    const { connection, add } = shop();
    const job = add('job:a', ...find, closing);
    expect(sums(connection).onMap.jobs).toBe(1);
    const changed = {
      ...job,
      circuitId: null,
      recentWork: ['seat' as const],
      symptoms: ['when-wet' as const],
    };
    expect(changeIntake(connection, 'job:a', changed, at).ok).toBe(true);
    expect(sums(connection).onMap.jobs).toBe(0);
    expect(readJob(connection, 'job:a')).toMatchObject({ recentWork: ['seat'], symptoms: ['when-wet'] });
  });
});

test('the sums of 20,000 closed jobs are there in well under half a second, by index', () => {
  const { connection, add } = shop();
  add('job:pattern', ...find, closing);
  expect(learnFromClosed(connection, 'map:tiny', 1)).toBe(0);
  connection.exec(`
    WITH RECURSIVE n (i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 20000)
    INSERT INTO job (id, map_id, map_revision, head, opened_at, changed_at, stage, minutes_spent, find_count, entry_count, lesson)
    SELECT 'job:past-' || i, map_id, map_revision, head, opened_at, changed_at, stage, 0, 0, 0, 'some'
    FROM job, n WHERE job.id = 'job:pattern';
    INSERT INTO lesson_amount (job_id, map_id, level, key, found, expected)
    SELECT job.id, CASE WHEN job.rowid % 50 = 0 THEN 'map:tiny' ELSE 'map:' || (job.rowid % 50) END, level, key, found, expected
    FROM job, lesson_amount WHERE lesson_amount.job_id = 'job:pattern' AND job.id LIKE 'job:past-%';
  `);
  const begun = performance.now();
  const { all } = sumLessons(connection, 'map:tiny', 'job:none');
  const ms = performance.now() - begun;
  expect(all.jobs).toBe(20_001);
  expect(all.found.rubSpotKinds['raw-edge']).toBeGreaterThan(10_000);
  expect(ms).toBeLessThan(400);
  const plan = connection
    .prepare(
      `EXPLAIN QUERY PLAN SELECT level, key, sum(found), sum(expected) FROM lesson_amount
       WHERE map_id = 'map:tiny' AND job_id <> 'job:none' GROUP BY level, key`,
    )
    .all() as { detail: string }[];
  expect(plan[0]?.detail).toContain('USING COVERING INDEX lesson_amount_by_map');
});
