import type { CloseOutcome, DamageCause, DamageType } from '#core/job/closing-words.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { type Connection, statement } from './connection.ts';
import { type JobLine, readRecalledLines } from './job-list-store.ts';
import { plainLetters, type Recall, textEnd } from './job-recall-store.ts';
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

/** The index knows three letters in a row. */
const lettersIndexed = 3;
/** One or two letters are looked for as the beginning of any three, if these are no more than so many. */
const mostBeginnings = 150;

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
  const { condition, values } = conditionFor(connection, words, mapId);
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

/** One question to the index, and a look into each text that is left for what the index does not know. */
function conditionFor(connection: Connection, words: readonly SearchWord[], mapId: MapId | null): Condition {
  const conditions: string[] = [];
  const values: string[] = [];
  const indexed: string[] = [];
  for (const { text, codes } of words) {
    const wanted = plainLetters(text);
    if (wanted === '') continue;
    const meant = codes.map(fenced);
    const known = [...wanted].length >= lettersIndexed ? [wanted] : threesFrom(connection, wanted);
    if (known) {
      const asked = [
        ...known.map((letters) => `words : ${quoted(letters)}`),
        ...meant.map((code) => `codes : ${quoted(code)}`),
      ];
      // Nothing begins so, and no code is meant: nothing is found.
      indexed.push(`(${asked.length > 0 ? asked.join(' OR ') : `words : ${quoted(nowhere)}`})`);
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

/** Letters that are in no text. */
const nowhere = textEnd.repeat(3);

/** Every three letters in the index that begin with these; null when there are too many to ask for. */
function threesFrom(connection: Connection, letters: string): string[] | null {
  connection.exec(
    `CREATE VIRTUAL TABLE IF NOT EXISTS temp.threes USING fts5vocab (main, job_search_letters, row)`,
  );
  const found = statement<{ term: string }>(
    connection,
    'SELECT term FROM temp.threes WHERE term >= ? AND term < ? LIMIT ?',
  ).all(letters, `${letters}\u{10ffff}`, mostBeginnings + 1);
  return found.length > mostBeginnings ? null : found.map(({ term }) => term);
}

const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
