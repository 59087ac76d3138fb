import { type JobFacts, jobFacts } from '#core/job/job-facts.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import type { MapExchange } from '#core/map/exchange.ts';
import { assert } from '#core/quantity/assert.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { ok } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { inOneTransaction } from './in-one-transaction.ts';
import { readJob } from './job-store.ts';
import { readPinnedMap } from './map-snapshot-store.ts';

/** What is kept beside a job for finding it again. */
export interface Recall {
  readonly facts: JobFacts;
  readonly circuitName: string;
  /** Everything written in words, as plain small letters. */
  readonly text: string;
}

/** A letter nobody writes; the index ends each text with it. */
export const textEnd = '\x03';

/** Letters without accents or case, so that a word is found however it was typed. */
export const plainLetters = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{Diacritic}/gu, '')
    .replaceAll('\0', '')
    .replaceAll(textEnd, '')
    .toLowerCase();

/** The facts of every job, last worked on first, for the shop's figures; of one model when a map is named. */
export function factsOfJobs(connection: Connection, mapId: MapId | null): JobFacts[] {
  workOutMissing(connection);
  const recalls = statement<{ recall: string }>(
    connection,
    'SELECT recall FROM job WHERE map_id = coalesce(?, map_id) ORDER BY changed_at DESC, id',
  ).all(mapId);
  return recalls.map(({ recall }) => (JSON.parse(recall) as Recall).facts);
}

/** Works out what is not kept yet in one transaction: thousands by themselves would wait for the disk each. */
function workOutMissing(connection: Connection): void {
  const sql = 'SELECT id FROM job WHERE recall IS NULL ORDER BY map_id, map_revision';
  const missing = statement<{ id: JobId }>(connection, sql).all();
  if (missing.length === 0) return;
  inOneTransaction(connection, () => {
    const recall = recaller(connection);
    for (const { id } of missing) recall(id);
    return ok(missing.length);
  });
}

/** Gives what is kept of one job after another, worked out where it is not; quickest in order of their maps. */
export function recaller(connection: Connection): (jobId: JobId) => Recall {
  const kept = statement<{ recall: string | null }>(connection, 'SELECT recall FROM job WHERE id = ?');
  const keep = statement(connection, 'UPDATE job SET recall = ? WHERE id = ?');
  let pinned: MapExchange | null = null;
  return (jobId) => {
    const row = kept.get(jobId);
    if (row?.recall) return JSON.parse(row.recall) as Recall;
    const job = readJob(connection, jobId);
    assert(job, `${jobId} is in the list but not in the store`);
    if (pinned?.id !== job.mapId || pinned.revision !== job.mapRevision) {
      pinned = readPinnedMap(connection, job.mapId, job.mapRevision);
    }
    const circuitName = pinned?.circuits.find(({ id }) => id === job.circuitId)?.name ?? '';
    const notes = standingEntries(job).flatMap((entry) =>
      entry.type === 'note' ? entry.text : 'note' in entry ? entry.note : [],
    );
    const text = plainLetters([job.vehicle.plate, job.complaint, circuitName, ...notes].join(' '));
    const recall: Recall = { facts: jobFacts(job), circuitName, text };
    keep.run(JSON.stringify(recall), jobId);
    return recall;
  };
}
