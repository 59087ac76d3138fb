import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { describe, expect, onTestFinished, test } from 'vitest';
import { invertPatch } from '#core/map/patch.ts';
import { backupFolderOf, listBackups } from '#db/backup/list-backups.ts';
import type { Connection } from '#db/connection.ts';
import { listJobs } from '#db/job-list-store.ts';
import { readJob } from '#db/job-store.ts';
import { commitTransaction, readHistory, readMapAt } from '#db/map-history-store.ts';
import { readPinnedMap } from '#db/map-snapshot-store.ts';
import { readMap } from '#db/map-store.ts';
import { migrate } from '#db/migrate.ts';
import { migrationSteps } from '#db/migrations/index.ts';
import { openStore } from '#db/open-store.ts';
import { readPicture } from '#db/picture-store.ts';
import { readPlace } from '#db/place-store.ts';
import { wasOffered } from '#db/sample-store.ts';
import { freshFolder } from '#tests/hosts/fresh-folder.ts';
import { openAt, openFreshStore } from './open-fresh-store.ts';
import { schemaDump } from './schema-dump.ts';

const fixtureFolder = join(import.meta.dirname, 'fixtures');
const fixtures = readdirSync(fixtureFolder).filter((name) => name.endsWith('.sql'));
const fixtureVersion = (name: string): number => Number(/\d{4}/.exec(name)?.[0]);
const head = migrationSteps.at(-1)?.version ?? 0;

/** A store file holding what a fixture's text says. */
function fileOfFixture(name: string): string {
  const file = join(freshFolder(), 'undertrim.db');
  const connection = new Database(file);
  connection.exec(readFileSync(join(fixtureFolder, name), 'utf8'));
  connection.close();
  return file;
}

function bareConnection(): { connection: Connection; file: string } {
  const file = join(freshFolder(), 'undertrim.db');
  const connection = new Database(file);
  onTestFinished(() => void connection.close());
  return { connection, file };
}

const reviewed = (): string =>
  readFileSync(new URL('../../db/schema.sql', import.meta.url), 'utf8').replace(/^(--.*\n)+\n/, '');

test('a new store has the reviewed tables', () => {
  expect(schemaDump(openFreshStore().connection)).toBe(reviewed());
});

test('steps are numbered one after another and their files carry the number', () => {
  expect(migrationSteps.map(({ version }) => version)).toEqual(migrationSteps.map((_, i) => i + 1));
  const files = readdirSync(new URL('../../db/migrations', import.meta.url)).filter((name) =>
    /^\d/.test(name),
  );
  expect(files.map((name) => Number(name.slice(0, 4)))).toEqual(migrationSteps.map(({ version }) => version));
});

test('a step imports nothing, so that today’s code can never bend it', () => {
  const folder = new URL('../../db/migrations/', import.meta.url);
  for (const name of readdirSync(folder).filter((each) => /^\d/.test(each))) {
    expect(readFileSync(new URL(name, folder), 'utf8')).not.toMatch(/^import|\bimport\(/m);
  }
});

test('every released version has a fixture, and lifting them all runs every step', () => {
  expect(fixtures.map(fixtureVersion)).toEqual(migrationSteps.map(({ version }) => version));
  const ran = new Set<number>();
  const watched = migrationSteps.map((step) => ({
    version: step.version,
    up: (connection: { exec(sql: string): unknown }) => {
      ran.add(step.version);
      step.up(connection);
    },
  }));
  for (const start of [null, ...fixtures]) {
    const file = start ? fileOfFixture(start) : join(freshFolder(), 'undertrim.db');
    const connection = new Database(file);
    expect(migrate(connection, file, watched)).toEqual({
      ok: true,
      value: start ? fixtureVersion(start) : 0,
    });
    expect(schemaDump(connection)).toBe(reviewed());
    connection.close();
  }
  expect([...ran].sort((a, b) => a - b)).toEqual(migrationSteps.map(({ version }) => version));
});

describe.each(fixtures)('the store of %s', (name) => {
  test('opens with its maps, jobs, history, pictures and places whole', () => {
    const connection = openAt(fileOfFixture(name));
    expect(connection.pragma('user_version', { simple: true })).toBe(head);
    expect(connection.pragma('integrity_check', { simple: true })).toBe('ok');
    expect(connection.pragma('foreign_key_check')).toEqual([]);
    const map = readMap(connection, 'map:tiny');
    expect(map).toMatchObject({ revision: 5, rubSpots: [], details: { name: 'Tiny sample' } });
    expect(map?.segments).toHaveLength(3);
    const { done, undone } = readHistory(connection, 'map:tiny');
    expect([done.length, undone.length]).toEqual([1, 1]);
    expect(readMapAt(connection, 'map:tiny', 4)).toMatchObject({ ok: true });
    expect(readPinnedMap(connection, 'map:tiny', 0)?.rubSpots).toHaveLength(1);
    expect(readJob(connection, 'job:tiny')?.entries).toHaveLength(2);
    expect(listJobs(connection)).toMatchObject([{ stage: 'opening', plate: 'STOCK 1', minutesSpent: 20 }]);
    const sha256 = connection.prepare('SELECT sha256 FROM picture_bytes').pluck().get() as string;
    const picture = readPicture(connection, sha256);
    expect(picture.ok && picture.value.bytes.toString('latin1')).toContain('fixture');
    expect(readPlace(connection, 'draw')).toBe('{"zoom":2}');
    expect(wasOffered(connection, 'orlune-pivet.map.json')).toBe(true);
  });

  test('goes on being edited and undone', () => {
    const connection = openAt(fileOfFixture(name));
    const [edit] = readHistory(connection, 'map:tiny').done;
    if (!edit) throw new Error('nothing to undo');
    const undo = { ...edit, origin: 'undo', patch: invertPatch(edit.patch) } as const;
    expect(commitTransaction(connection, 'map:tiny', 5, undo, '2026-02-01T00:00:00Z')).toEqual({
      ok: true,
      value: 6,
    });
    expect(readMap(connection, 'map:tiny')?.rubSpots).toHaveLength(1);
  });
});

test('a store a newer program wrote is refused and left alone', () => {
  const { connection, file } = bareConnection();
  connection.exec(`CREATE TABLE later (x); PRAGMA user_version = ${head + 1}`);
  expect(openStore(file)).toEqual({
    ok: false,
    problem: { code: 'store-newer', found: head + 1, known: head },
  });
  expect(schemaDump(connection)).toBe('CREATE TABLE later (x);\n');
});

test('another program’s database is refused and left alone', () => {
  const { connection, file } = bareConnection();
  connection.exec('CREATE TABLE theirs (x)');
  expect(openStore(file)).toMatchObject({ ok: false, problem: { code: 'store-damaged' } });
  expect(schemaDump(connection)).toBe('CREATE TABLE theirs (x);\n');
});

const addNote = {
  version: 1,
  up: (c: { exec(sql: string): unknown }) => c.exec('CREATE TABLE note (text TEXT)'),
};

test('an existing store is copied before it is lifted, and the copy opens', () => {
  const { connection, file } = bareConnection();
  migrate(connection, file, [addNote]);
  connection.exec(`INSERT INTO note VALUES ('kept')`);
  const second = { version: 2, up: (c: { exec(sql: string): unknown }) => c.exec('DELETE FROM note') };
  expect(migrate(connection, file, [addNote, second])).toEqual({ ok: true, value: 1 });
  const folder = backupFolderOf(dirname(file));
  const copies = listBackups(folder);
  expect(copies.map(({ reason }) => reason)).toEqual(['before-lifting']);
  const copy = new Database(join(folder, copies[0]?.fileName ?? ''));
  expect(copy.prepare('SELECT text FROM note').pluck().all()).toEqual(['kept']);
  expect(copy.pragma('user_version', { simple: true })).toBe(1);
  copy.close();
});

test('a step that fails half-way leaves the store at its old version, untouched', () => {
  const { connection, file } = bareConnection();
  migrate(connection, file, [addNote]);
  connection.exec(`INSERT INTO note VALUES ('kept')`);
  const second = { version: 2, up: (c: { exec(sql: string): unknown }) => c.exec('DELETE FROM note') };
  const third = {
    version: 3,
    up: () => {
      throw new Error('a slip in the third step');
    },
  };
  expect(() => migrate(connection, file, [addNote, second, third])).toThrow('third step');
  expect(connection.prepare('SELECT text FROM note').pluck().all()).toEqual(['kept']);
  expect(connection.pragma('user_version', { simple: true })).toBe(1);
  expect(connection.pragma('foreign_keys', { simple: true })).toBe(1);
});

test('a step that breaks a reference is taken back', () => {
  const { connection, file } = bareConnection();
  const tables = {
    version: 1,
    up: (c: { exec(sql: string): unknown }) =>
      c.exec('CREATE TABLE a (id INTEGER PRIMARY KEY); CREATE TABLE b (a INTEGER REFERENCES a (id))'),
  };
  const stray = { version: 2, up: (c: { exec(sql: string): unknown }) => c.exec('INSERT INTO b VALUES (7)') };
  migrate(connection, file, [tables]);
  expect(() => migrate(connection, file, [tables, stray])).toThrow('broken references');
  expect(connection.prepare('SELECT count(*) FROM b').pluck().get()).toBe(0);
});
