import type { CloseOutcome, DamageCause, DamageType } from '#core/job/closing-words.ts';
import { type JobFacts, jobFacts } from '#core/job/job-facts.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import { assert } from '#core/quantity/assert.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { ok } from '#core/quantity/result.ts';
import { type Connection, statement } from './connection.ts';
import { inOneTransaction } from './in-one-transaction.ts';
import { type JobLine, listJobs } from './job-list-store.ts';
import { readJob } from './job-store.ts';
import { readPinnedMap } from './map-snapshot-store.ts';

/** What is kept beside a job for finding it again. */
interface Recall {
  readonly facts: JobFacts;
  readonly circuitName: string;
  /** Everything written in words, as plain small letters. */
  readonly text: string;
}

/** A past job as the search shows it. */
export interface SearchedJob extends JobLine {
  readonly circuitName: string;
  readonly outcome: CloseOutcome | null;
  readonly causes: readonly DamageCause[];
  readonly damage: readonly DamageType[];
}

/** One word as typed, and the codes its meaning covers in the user's language. */
export interface SearchWord {
  readonly text: string;
  readonly codes: readonly string[];
}

/** Letters without accents or case, so that a word is found however it was typed. */
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{Diacritic}/gu, '')
    .toLowerCase();

/**
 * Jobs that hold every word, in plate, complaint, model, circuit and notes or as a cause or kind of damage;
 * last worked on first. What a job is searched by is worked out once and kept until its record changes.
 */
export function searchJobs(
  connection: Connection,
  words: readonly SearchWord[],
  mapId: MapId | null,
): SearchedJob[] {
  const wanted = words.map(({ text, codes }) => ({ text: plain(text), codes: new Set(codes) }));
  workOutMissing(connection);
  return listJobs(connection).flatMap((line): SearchedJob[] => {
    if (mapId !== null && line.mapId !== mapId) return [];
    const { facts, circuitName, text } = recallOf(connection, line.id);
    const causes = [...new Set(facts.found.flatMap(({ cause }) => cause ?? []))];
    const damage = [...new Set(facts.found.flatMap((found) => found.damage ?? []))];
    const haystack = `${text} ${plain(line.mapName)}`;
    const matches = wanted.every(
      (word) => haystack.includes(word.text) || [...causes, ...damage].some((code) => word.codes.has(code)),
    );
    return matches ? [{ ...line, circuitName, outcome: facts.outcome, causes, damage }] : [];
  });
}

/** The facts of every job, for the shop's figures; of one model when a map is named. */
export function factsOfJobs(connection: Connection, mapId: MapId | null): JobFacts[] {
  workOutMissing(connection);
  return listJobs(connection)
    .filter((line) => mapId === null || line.mapId === mapId)
    .map(({ id }) => recallOf(connection, id).facts);
}

/** Works out what is not kept yet in one transaction: thousands by themselves would wait for the disk each. */
function workOutMissing(connection: Connection): void {
  const missing = statement<{ id: JobId }>(connection, 'SELECT id FROM job WHERE recall IS NULL').all();
  if (missing.length === 0) return;
  inOneTransaction(connection, () => {
    for (const { id } of missing) recallOf(connection, id);
    return ok(missing.length);
  });
}

function recallOf(connection: Connection, jobId: JobId): Recall {
  const kept = statement<{ recall: string | null }>(connection, 'SELECT recall FROM job WHERE id = ?').get(
    jobId,
  );
  if (kept?.recall) return JSON.parse(kept.recall) as Recall;
  const recall = workOut(connection, jobId);
  statement(connection, 'UPDATE job SET recall = ? WHERE id = ?').run(JSON.stringify(recall), jobId);
  return recall;
}

function workOut(connection: Connection, jobId: JobId): Recall {
  const job = readJob(connection, jobId);
  assert(job, `${jobId} is in the list but not in the store`);
  const map = readPinnedMap(connection, job.mapId, job.mapRevision);
  const circuitName = map?.circuits.find(({ id }) => id === job.circuitId)?.name ?? '';
  const notes = standingEntries(job).flatMap((entry) =>
    entry.type === 'note' ? entry.text : 'note' in entry ? entry.note : [],
  );
  const text = plain([job.vehicle.plate, job.complaint, circuitName, ...notes].join(' '));
  return { facts: jobFacts(job), circuitName, text };
}
