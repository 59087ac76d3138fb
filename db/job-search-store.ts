import type { CloseOutcome, DamageCause, DamageType } from '#core/job/closing-words.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import type { Connection } from './connection.ts';
import { type JobLine, readRecalledLines } from './job-list-store.ts';
import { plainLetters, type Recall } from './job-recall-store.ts';
import { fenced, indexChangedJobs } from './job-search-index.ts';

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

/** The first jobs found, and how many there are in all. */
export interface FoundJobs {
  readonly jobs: readonly SearchedJob[];
  readonly total: number;
}

/** The index knows three letters in a row; fewer are looked for in the text itself. */
const lettersIndexed = 3;

/**
 * Jobs that hold every word, in plate, complaint, model, circuit and notes or as a cause or kind of damage;
 * last worked on first, `most` of them.
 */
export function searchJobs(
  connection: Connection,
  words: readonly SearchWord[],
  mapId: MapId | null,
  most: number,
): FoundJobs {
  indexChangedJobs(connection, Number.MAX_SAFE_INTEGER);
  const { condition, values } = conditionFor(words, mapId);
  const found = connection
    .prepare<unknown[], { id: JobId; total: number }>(
      `SELECT job_id AS id, count(*) OVER () AS total FROM job_search WHERE ${condition}
       ORDER BY changed_at DESC, job_id LIMIT ?`,
    )
    .all(...values, most);
  const rows = readRecalledLines(
    connection,
    found.map(({ id }) => id),
  );
  const jobs = rows.map(({ recall, ...line }): SearchedJob => {
    const { facts, circuitName } = JSON.parse(recall) as Recall;
    const causes = [...new Set(facts.found.flatMap(({ cause }) => cause ?? []))];
    const damage = [...new Set(facts.found.flatMap((place) => place.damage ?? []))];
    return { ...line, circuitName, outcome: facts.outcome, causes, damage };
  });
  return { jobs, total: found[0]?.total ?? 0 };
}

interface Condition {
  readonly condition: string;
  readonly values: readonly string[];
}

/** Long words as one question to the index, short ones as a look into each text that is left. */
function conditionFor(words: readonly SearchWord[], mapId: MapId | null): Condition {
  const conditions: string[] = [];
  const values: string[] = [];
  const indexed: string[] = [];
  for (const { text, codes } of words) {
    const wanted = plainLetters(text);
    if (wanted === '') continue;
    const meant = codes.map(fenced);
    if ([...wanted].length >= lettersIndexed) {
      indexed.push(
        `(${[`words : ${quoted(wanted)}`, ...meant.map((code) => `codes : ${quoted(code)}`)].join(' OR ')})`,
      );
    } else {
      conditions.push(`(${['instr(words, ?)', ...meant.map(() => 'instr(codes, ?)')].join(' OR ')})`);
      values.push(wanted, ...meant);
    }
  }
  if (indexed.length > 0) {
    conditions.unshift('id IN (SELECT rowid FROM job_search_letters WHERE job_search_letters MATCH ?)');
    values.unshift(indexed.join(' AND '));
  }
  if (mapId !== null) {
    conditions.push('map_id = ?');
    values.push(mapId);
  }
  return { condition: conditions.join(' AND ') || 'TRUE', values };
}

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
