import { closeSync, openSync, readdirSync, statSync, truncateSync, writeFileSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, test } from 'vitest';
import { mapToExchange } from '#core/map/exchange.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { listBackups } from '#db/backup/list-backups.ts';
import { takeBackup } from '#db/backup/take-backup.ts';
import type { Connection } from '#db/connection.ts';
import { holdFolder } from '#db/folder-hold.ts';
import { addMap, readMap } from '#db/map-store.ts';
import { openStore } from '#db/open-store.ts';
import { keepPicture } from '#db/picture-store.ts';
import { storeProblem } from '#db/store-problem.ts';
import { freshFolder } from '#tests/hosts/fresh-folder.ts';
import { sample } from '#tests/sample.ts';
import { openAt, openFreshStore } from './open-fresh-store.ts';

const map = mapToExchange(sample.map);
const now = '2026-01-05T09:00:00Z';

/** The problem a piece of work ends in when it throws. */
function troubleOf(work: () => unknown): Problem | null {
  try {
    work();
  } catch (error) {
    return storeProblem(error);
  }
  throw new Error('nothing went wrong');
}

test('a full disk is told, loses nothing, and work goes on when there is room again', () => {
  const { connection } = openFreshStore();
  addMap(connection, map, now);
  const pages = connection.pragma('page_count', { simple: true }) as number;
  connection.pragma(`max_page_count = ${pages + 1}`);
  const large = Buffer.alloc(200_000, 1);
  expect(troubleOf(() => keepPicture(connection, 'image/png', large))).toEqual({ code: 'store-full' });
  expect(troubleOf(() => addMap(connection, { ...map, id: 'map:big', nodes: manyNodes() }, now))).toEqual({
    code: 'store-full',
  });
  expect(connection.inTransaction).toBe(false);
  expect(readMap(connection, 'map:big')).toBeNull();
  expect(readMap(connection, map.id)).toEqual(map);
  connection.pragma('max_page_count = 1000000');
  expect(addMap(connection, { ...map, id: 'map:big', nodes: manyNodes() }, now)).toEqual({
    ok: true,
    value: 'map:big',
  });
  expect(connection.pragma('integrity_check', { simple: true })).toBe('ok');
});

const manyNodes = () =>
  Array.from({ length: 3_000 }, (_, i) => ({
    ...(map.nodes[0] as (typeof map.nodes)[number]),
    id: `node:n${i}` as const,
  }));

test('a store that may not be written is told', () => {
  const { connection } = openFreshStore();
  connection.pragma('query_only = ON');
  expect(troubleOf(() => keepPicture(connection, 'image/png', Buffer.of(1)))).toEqual({
    code: 'store-read-only',
  });
});

test('a store another connection is writing is told as busy', () => {
  const { connection, file } = openFreshStore();
  const other = openAt(file);
  other.pragma('busy_timeout = 0');
  connection.exec('BEGIN IMMEDIATE');
  expect(troubleOf(() => addMap(other, map, now))).toEqual({ code: 'store-busy' });
  connection.exec('ROLLBACK');
  expect(addMap(other, map, now)).toEqual({ ok: true, value: map.id });
});

test('a file that is no database is refused and left alone', () => {
  const file = join(freshFolder(), 'undertrim.db');
  writeFileSync(file, 'a letter to the workshop, not a database. '.repeat(100));
  const size = statSync(file).size;
  expect(openStore(file)).toMatchObject({ ok: false, problem: { code: 'store-damaged' } });
  expect(statSync(file).size).toBe(size);
});

test('a store with pages overwritten or cut off is refused', () => {
  for (const damage of ['overwritten', 'cut off'] as const) {
    const { connection, file } = openFreshStore();
    addMap(connection, { ...map, nodes: manyNodes() }, now);
    connection.close();
    if (damage === 'cut off') truncateSync(file, Math.floor(statSync(file).size / 2 / 4096) * 4096);
    else {
      const handle = openSync(file, 'r+');
      writeSync(handle, Buffer.alloc(40_960, 0xa5), 0, 40_960, 8_192);
      closeSync(handle);
    }
    expect(openStore(file), damage).toMatchObject({ ok: false, problem: { code: 'store-damaged' } });
  }
});

test('a bug is not taken for a trouble of the surroundings', () => {
  const { connection } = openFreshStore();
  expect(troubleOf(() => connection.exec('SELECT * FROM nowhere'))).toBeNull();
  expect(storeProblem('text')).toBeNull();
  expect(storeProblem(new Database.SqliteError('extended', 'SQLITE_IOERR_WRITE'))).toMatchObject({
    code: 'store-damaged',
  });
});

test('a folder is held by one at a time and is free again afterwards', () => {
  const folder = freshFolder();
  const first = holdFolder(folder);
  expect(first.ok).toBe(true);
  expect(holdFolder(folder)).toEqual({ ok: false, problem: { code: 'store-busy' } });
  if (first.ok) first.value.release();
  const second = holdFolder(folder);
  expect(second.ok).toBe(true);
  if (second.ok) second.value.release();
});

/** The same connection on a disk that fills up while it is copied. */
const onFullDisk = (connection: Connection): Connection =>
  new Proxy(connection, {
    get: (store, name) => {
      if (name === 'backup') {
        return async (part: string) => {
          writeFileSync(part, 'half of a store');
          throw new Database.SqliteError('database or disk is full', 'SQLITE_FULL');
        };
      }
      const value: unknown = Reflect.get(store, name);
      return typeof value === 'function' ? value.bind(store) : value;
    },
  });

test('a disk that fills up under a backup is told, leaves no half of one, and the next goes well', async () => {
  const { connection, file } = openFreshStore();
  addMap(connection, map, now);
  const folder = join(dirname(file), 'backups');
  expect(await takeBackup(onFullDisk(connection), folder, 'asked', now)).toEqual({
    ok: false,
    problem: { code: 'store-full' },
  });
  expect(readdirSync(folder)).toEqual([]);
  expect(addMap(connection, { ...map, id: 'map:after' }, now).ok).toBe(true);
  expect(await takeBackup(connection, folder, 'asked', now)).toMatchObject({ ok: true });
  expect(listBackups(folder)).toHaveLength(1);
});
