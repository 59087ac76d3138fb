import { type Intake, type Job, type JobEntry, jobFormat, jobVersion } from '#core/job/job-document.ts';
import { namedEntry } from '#core/job/job-faults.ts';
import { closingOf } from '#core/job/job-stage.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import type { MapExchange } from '#core/map/exchange.ts';
import type { JobId } from '#core/quantity/id.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { inOneTransaction } from './in-one-transaction.ts';
import { type JobProgress, jobProgress } from './job-progress.ts';
import { forgetLesson } from './lesson-store.ts';
import { pinMap } from './map-snapshot-store.ts';

/** What a job says before its entries; stored as one piece. */
export type JobIntake = Intake & Pick<Job, 'handedOn'>;

interface JobRow {
  readonly id: JobId;
  readonly map_id: Job['mapId'];
  readonly map_revision: number;
  readonly head: string;
  readonly opened_at: string;
}

/**
 * Keeps a new job and pins the map it was opened on. It counts as last changed when its last entry was
 * made. `duplicate-id` when the job is here already.
 */
export function addJob(connection: Connection, job: Job, map: MapExchange): Result<JobId> {
  return inOneTransaction(connection, () => {
    if (statement(connection, 'SELECT 1 FROM job WHERE id = ?').get(job.id)) {
      return fail({ code: 'duplicate-id', thing: job.id });
    }
    pinMap(connection, map);
    const { stage, minutesSpent, findCount } = jobProgress(job);
    const changedAt = new Date(job.entries.at(-1)?.at ?? job.openedAt).toISOString();
    statement(
      connection,
      `INSERT INTO job (id, map_id, map_revision, head, opened_at, changed_at,
         stage, minutes_spent, find_count, entry_count)
       VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, 0)`,
    ).run(
      job.id,
      job.mapId,
      job.mapRevision,
      JSON.stringify(intakeOf(job)),
      job.openedAt,
      changedAt,
      stage,
      minutesSpent,
      findCount,
    );
    return insertEntries(connection, job.id, 0, job.entries);
  });
}

const intakeOf = (job: JobIntake): JobIntake => ({
  vehicle: job.vehicle,
  complaint: job.complaint,
  failureType: job.failureType,
  circuitId: job.circuitId,
  alsoFailingCircuitIds: job.alsoFailingCircuitIds,
  workingCircuitIds: job.workingCircuitIds,
  ...(job.recentWork ? { recentWork: job.recentWork } : {}),
  ...(job.symptoms ? { symptoms: job.symptoms } : {}),
  ...(job.handedOn ? { handedOn: true } : {}),
});

function insertEntries(
  connection: Connection,
  jobId: JobId,
  after: number,
  entries: readonly JobEntry[],
): Result<JobId> {
  const insert = statement(
    connection,
    `INSERT INTO job_entry (job_id, seq, entry_id, body) VALUES (?, ?, ?, ?)
     ON CONFLICT (job_id, entry_id) DO NOTHING`,
  );
  for (const [i, entry] of entries.entries()) {
    const { changes } = insert.run(jobId, after + i, entry.id, JSON.stringify(entry));
    if (changes !== 1) return fail({ code: 'duplicate-id', thing: entry.id });
  }
  statement(connection, 'UPDATE job SET entry_count = ? WHERE id = ?').run(after + entries.length, jobId);
  return ok(jobId);
}

/** A job with all of its entries; null when it is not here. */
export function readJob(connection: Connection, jobId: JobId): Job | null {
  const row = statement<JobRow>(connection, 'SELECT * FROM job WHERE id = ?').get(jobId);
  if (!row) return null;
  const bodies = statement<{ body: string }>(
    connection,
    'SELECT body FROM job_entry WHERE job_id = ? ORDER BY seq',
  ).all(jobId);
  return {
    format: jobFormat,
    version: jobVersion,
    id: row.id,
    mapId: row.map_id,
    mapRevision: row.map_revision,
    openedAt: row.opened_at,
    ...(JSON.parse(row.head) as JobIntake),
    entries: bodies.map(({ body }) => JSON.parse(body) as JobEntry),
  };
}

/**
 * Adds entries after those the caller knows of, and gives their number. Problems: `not-found`,
 * `stale-revision` when others came in between, `duplicate-id`, `job-reference` when an entry speaks of one
 * that is not there, and `job-closed` for anything but taking back what closed it.
 */
export function appendEntries(
  connection: Connection,
  jobId: JobId,
  expectedEntries: number,
  entries: readonly JobEntry[],
  now: string,
): Result<number> {
  return inOneTransaction(connection, () => {
    const job = readJob(connection, jobId);
    if (!job) return fail({ code: 'not-found', thing: jobId });
    const found = job.entries.length;
    if (found !== expectedEntries) {
      return fail({ code: 'stale-revision', expected: expectedEntries, found });
    }
    const known = new Set(job.entries.map((entry) => entry.id));
    const closed = closingOf(standingEntries(job));
    const [first] = entries;
    if (closed && !(first?.type === 'take-back' && first.entryId === closed.id)) {
      return fail({ code: 'job-closed', job: jobId });
    }
    for (const entry of entries) {
      const named = namedEntry(entry);
      if (named && !known.has(named.id)) {
        return fail({ code: 'job-reference', entry: entry.id, field: named.field, missing: named.id });
      }
      known.add(entry.id);
    }
    const inserted = insertEntries(connection, jobId, found, entries);
    if (!inserted.ok) return inserted;
    const after = { ...job, entries: [...job.entries, ...entries] };
    noteProgress(connection, jobId, jobProgress(after), now);
    return ok(after.entries.length);
  });
}

function noteProgress(connection: Connection, jobId: JobId, progress: JobProgress, now: string): void {
  statement(
    connection,
    'UPDATE job SET stage = ?, minutes_spent = ?, find_count = ?, changed_at = ?, recall = NULL WHERE id = ?',
  ).run(progress.stage, progress.minutesSpent, progress.findCount, now, jobId);
  forgetLesson(connection, jobId);
}

/** Counts the finds of the jobs whose count a migration forgot, and says anew how far they have come. */
export function countFindsAnew(connection: Connection): void {
  const forgotten = statement<{ id: JobId }>(connection, 'SELECT id FROM job WHERE find_count < 0').all();
  if (forgotten.length === 0) return;
  inOneTransaction(connection, () => {
    for (const { id } of forgotten) {
      const job = readJob(connection, id);
      if (!job) continue;
      const { stage, findCount } = jobProgress(job);
      statement(connection, 'UPDATE job SET stage = ?, find_count = ? WHERE id = ?').run(
        stage,
        findCount,
        id,
      );
    }
    return ok(forgotten.length);
  });
}

/** Replaces what was taken down when the car came in. `not-found` when the job is not here. */
export function changeIntake(
  connection: Connection,
  jobId: JobId,
  intake: JobIntake,
  now: string,
): Result<JobId> {
  const kept = readJob(connection, jobId);
  const { changes } = statement(
    connection,
    'UPDATE job SET head = ?, changed_at = ?, recall = NULL WHERE id = ?',
  ).run(JSON.stringify(intakeOf(kept?.handedOn ? { ...intake, handedOn: true } : intake)), now, jobId);
  forgetLesson(connection, jobId);
  return changes === 1 ? ok(jobId) : fail({ code: 'not-found', thing: jobId });
}
