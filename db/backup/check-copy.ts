import { createHash } from 'node:crypto';
import Database from 'better-sqlite3';
import { fail, ok, type Result } from '#core/quantity/result.ts';
import type { Connection } from '../connection.ts';
import { migrationSteps } from '../migrations/index.ts';
import { storeProblem } from '../store-problem.ts';

/** How long checking goes on before the rest of the program gets its turn. */
const turnMs = 30;

const nextTurn = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));

/** Columns that hold JSON as text; a letter gone wrong in one is seen by no check of the pages. */
const jsonColumns = [
  ['map_record', 'body'],
  ['job', 'head'],
  ['job_entry', 'body'],
] as const;

/**
 * Opens a copy of a store and looks at all of it: pages, indexes, references, documents, and each picture
 * against its SHA-256. Gives its version; `store-damaged` says what was wrong, `store-newer` that it is a
 * newer program's. The copy becomes one plain file without a write-ahead log. Lets others work in between.
 */
export async function checkCopy(
  file: string,
  onShare: (share: number) => void = () => undefined,
): Promise<Result<number>> {
  let copy: Connection | undefined;
  try {
    copy = new Database(file, { fileMustExist: true });
    copy.pragma('journal_mode = DELETE');
    return await checked(copy, onShare);
  } catch (error) {
    const problem = storeProblem(error);
    if (!problem) throw error;
    return fail(problem);
  } finally {
    copy?.close();
  }
}

async function checked(copy: Connection, onShare: (share: number) => void): Promise<Result<number>> {
  const version = copy.pragma('user_version', { simple: true }) as number;
  const known = migrationSteps.at(-1)?.version ?? 0;
  if (version > known) return fail({ code: 'store-newer', found: version, known });
  if (version < 1) return fail({ code: 'store-damaged', detail: 'no store of ours' });
  const tables = copy
    .prepare(`SELECT name FROM sqlite_schema WHERE type = 'table' AND name <> 'picture_bytes'`)
    .pluck()
    .all() as string[];
  for (const table of tables) {
    const said = copy.pragma(`integrity_check(${table})`, { simple: true }) as string;
    if (said !== 'ok') return fail({ code: 'store-damaged', detail: said });
    await nextTurn();
  }
  const broken = (copy.pragma('foreign_key_check') as unknown[]).length;
  if (broken > 0) return fail({ code: 'store-damaged', detail: `${broken} broken references` });
  for (const [table, column] of jsonColumns) {
    const sql = `SELECT count(*) FROM ${table} WHERE NOT json_valid(${column})`;
    const wrong = copy.prepare(sql).pluck().get() as number;
    if (wrong > 0) return fail({ code: 'store-damaged', detail: `${wrong} unreadable in ${table}` });
    await nextTurn();
  }
  const wrong = await wrongPictures(copy, onShare);
  return wrong === 0 ? ok(version) : fail({ code: 'store-damaged', detail: `${wrong} unreadable pictures` });
}

async function wrongPictures(copy: Connection, onShare: (share: number) => void): Promise<number> {
  const rowids = copy.prepare('SELECT rowid FROM picture_bytes').pluck().all() as number[];
  const read = copy.prepare('SELECT sha256, bytes FROM picture_bytes WHERE rowid = ?');
  let wrong = 0;
  let turnEnds = performance.now() + turnMs;
  for (const [i, rowid] of rowids.entries()) {
    const { sha256, bytes } = read.get(rowid) as { sha256: string; bytes: Buffer };
    if (createHash('sha256').update(bytes).digest('hex') !== sha256) wrong++;
    if (performance.now() < turnEnds) continue;
    onShare((i + 1) / rowids.length);
    await nextTurn();
    turnEnds = performance.now() + turnMs;
  }
  return wrong;
}
