import {
  closeSync,
  existsSync,
  openSync,
  readFileSync,
  statSync,
  truncateSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, onTestFinished, test } from 'vitest';
import type { Job } from '#core/job/job-document.ts';
import { mapToExchange } from '#core/map/exchange.ts';
import { type Chance, seededChance } from '#core/quantity/chance.ts';
import { takeBackup } from '#db/backup/take-backup.ts';
import type { Connection } from '#db/connection.ts';
import { listJobs } from '#db/job-list-store.ts';
import { addJob, readJob } from '#db/job-store.ts';
import { listMaps } from '#db/map-list-store.ts';
import { addMap, readMap } from '#db/map-store.ts';
import { openStore } from '#db/open-store.ts';
import { keepPicture } from '#db/picture-store.ts';
import { type Loss, readLoss } from '#db/salvage/loss-store.ts';
import { openOrSalvage } from '#db/salvage/open-or-salvage.ts';
import { wholeJob } from '#tests/core/job/closing-record.ts';
import { freshFolder } from '#tests/hosts/fresh-folder.ts';
import { sample } from '#tests/sample.ts';
import { openFreshStore } from './open-fresh-store.ts';

const map = mapToExchange(sample.map);
const now = '2026-01-05T09:00:00.000Z';
const mapIds = Array.from({ length: 30 }, (_, i) => `map:m${String(i).padStart(2, '0')}` as const);

/** A store with thirty maps, a job on each and thirty pictures. */
function fill(connection: Connection): void {
  for (const [i, id] of mapIds.entries()) {
    const each = { ...map, id, details: { ...map.details, name: `Car ${i}` } };
    addMap(connection, each, now);
    const vehicle = { ...sample.job.vehicle, plate: `STOCK ${i}` };
    const job: Job = { ...wholeJob().job, id: `job:j${i}`, mapId: id, mapRevision: map.revision, vehicle };
    expect(addJob(connection, job, each).ok).toBe(true);
    keepPicture(connection, 'image/png', Buffer.alloc(9_000, i));
  }
}

function filledShop() {
  const { connection, file } = openFreshStore();
  fill(connection);
  return { connection, file };
}

/** Opens a damaged store; what came of it, and what was told. */
function salvaged(file: string): { readonly connection: Connection; readonly loss: Loss } {
  const opened = openOrSalvage(file, now);
  if (!opened.ok) throw new Error(opened.problem.code);
  onTestFinished(() => void opened.value.close());
  expect(opened.value.pragma('integrity_check', { simple: true })).toBe('ok');
  expect(opened.value.pragma('foreign_key_check')).toEqual([]);
  const loss = readLoss(file);
  if (!loss) throw new Error('nothing was told');
  return { connection: opened.value, loss };
}

/** Pages a tree of the store is kept in, but never the first. */
function pagesOf(connection: Connection, name: string): number[] {
  const sql = `SELECT pageno FROM dbstat WHERE name = ? AND pagetype = 'leaf' ORDER BY pageno`;
  return connection.prepare(sql).pluck().all(name) as number[];
}

function spoil(file: string, page: number): void {
  const handle = openSync(file, 'r+');
  writeSync(handle, Buffer.alloc(4_096, 0xa5), 0, 4_096, (page - 1) * 4_096);
  closeSync(handle);
}

const namesOf = (connection: Connection) => ({
  maps: listMaps(connection).map(({ name }) => name),
  jobs: listJobs(connection).map(({ plate }) => plate),
});

test('pages lost from the middle cost what was on them and no more, and what it was is told', () => {
  const { connection, file } = filledShop();
  const [pages, pictures] = [pagesOf(connection, 'map_record'), pagesOf(connection, 'picture_bytes')];
  connection.close();
  spoil(file, pages[Math.floor(pages.length / 2)] as number);
  spoil(file, pictures[3] as number);
  const after = salvaged(file);
  const { maps, jobs } = namesOf(after.connection);
  expect(after.loss.keptMaps).toBe(maps.length);
  expect(maps.length).toBeGreaterThan(15);
  expect(maps.length + after.loss.lost.maps.length).toBe(30);
  expect(after.loss.lost.maps.length + after.loss.incomplete.maps.length).toBeGreaterThan(0);
  for (const name of after.loss.lost.maps) expect(maps).not.toContain(name);
  // Jobs keep the map they were opened on, so none is lost with it.
  expect(jobs).toHaveLength(30);
  expect(after.loss.keptPictures + after.loss.lost.pictures).toBe(30);
  expect(after.loss.lost.pictures).toBeGreaterThan(0);
  for (const id of mapIds) {
    const read = readMap(after.connection, id);
    if (read && !after.loss.incomplete.maps.includes(read.details.name)) {
      expect(read.nodes).toEqual(map.nodes);
    }
  }
});

test('the damaged file is set aside just as it was found, with what was lost beside it', () => {
  const { connection, file } = filledShop();
  const [page] = pagesOf(connection, 'job_entry');
  connection.close();
  spoil(file, page as number);
  const damaged = readFileSync(file);
  const { loss } = salvaged(file);
  expect(readFileSync(join(loss.asideFolder, 'undertrim.db')).equals(damaged)).toBe(true);
  expect(existsSync(join(loss.asideFolder, 'what-was-lost.json'))).toBe(true);
  expect(loss.incomplete.jobs.length + loss.lost.jobs.length).toBeGreaterThan(0);
});

test('what cannot be read comes from the last backup, and which things did is told', async () => {
  const { connection, file } = filledShop();
  const taken = await takeBackup(connection, join(dirname(file), 'backups'), 'daily', now);
  expect(taken.ok).toBe(true);
  const pages = [...pagesOf(connection, 'map_record').slice(2, 5), ...pagesOf(connection, 'job').slice(0, 1)];
  connection.close();
  for (const page of pages) spoil(file, page);
  const after = salvaged(file);
  expect(namesOf(after.connection).maps).toHaveLength(30);
  expect(namesOf(after.connection).jobs).toHaveLength(30);
  expect(after.loss.lost).toEqual({ maps: [], jobs: [], pictures: 0 });
  expect(after.loss.fromBackup.maps.length).toBeGreaterThan(0);
  expect(after.loss.backupAt).toBe(now);
  for (const id of mapIds) expect(readMap(after.connection, id)?.nodes).toEqual(map.nodes);
});

test('a file that is no database at all is set aside and the last backup takes its place', async () => {
  const { connection, file } = filledShop();
  await takeBackup(connection, join(dirname(file), 'backups'), 'daily', now);
  connection.close();
  writeFileSync(file, 'a letter to the workshop '.repeat(1_000));
  const { connection: after, loss } = salvaged(file);
  expect(namesOf(after).maps).toHaveLength(30);
  expect(namesOf(after).jobs).toHaveLength(30);
  expect(loss.keptPictures).toBe(30);
  expect(readFileSync(join(loss.asideFolder, 'undertrim.db'), 'utf8')).toContain('a letter');
});

test('another program’s database without any backup is set aside and an empty store opens', () => {
  const file = join(freshFolder(), 'undertrim.db');
  const theirs = new Database(file);
  theirs.exec('CREATE TABLE theirs (x); INSERT INTO theirs VALUES (7)');
  theirs.close();
  const { connection, loss } = salvaged(file);
  expect(namesOf(connection)).toEqual({ maps: [], jobs: [] });
  const aside = new Database(join(loss.asideFolder, 'undertrim.db'));
  expect(aside.prepare('SELECT x FROM theirs').pluck().all()).toEqual([7]);
  aside.close();
});

test('a file cut off in the middle opens again with what is left', () => {
  const { connection, file } = filledShop();
  connection.close();
  truncateSync(file, Math.floor((statSync(file).size * 0.6) / 4_096) * 4_096);
  const { connection: after, loss } = salvaged(file);
  expect(loss.keptMaps).toBe(namesOf(after).maps.length);
  expect(loss.keptJobs).toBe(namesOf(after).jobs.length);
});

/** Bytes changed anywhere, or a piece cut off or blanked. */
function harm(file: string, chance: Chance): void {
  const size = statSync(file).size;
  const handle = openSync(file, 'r+');
  const times = 1 + Math.floor(chance() * 12);
  for (let i = 0; i < times; i++) {
    const length = chance() < 0.5 ? 1 + Math.floor(chance() * 8) : Math.floor(chance() * 6_000);
    const bytes = Buffer.from(Array.from({ length }, () => Math.floor(chance() * 256)));
    writeSync(handle, bytes, 0, length, Math.floor(chance() * (size - length)));
  }
  closeSync(handle);
  if (chance() < 0.2) truncateSync(file, Math.floor(chance() * size));
}

test('however a file is harmed, a start ends in a sound store or a refusal, never in a throw', () => {
  const { connection, file } = filledShop();
  connection.close();
  const sound = readFileSync(file);
  let saved = 0;
  for (let seed = 1; seed <= 40; seed++) {
    const harmed = join(freshFolder(), 'undertrim.db');
    writeFileSync(harmed, sound);
    harm(harmed, seededChance(seed));
    const opened = openOrSalvage(harmed, now);
    if (!opened.ok) {
      expect(opened.problem.code, `seed ${seed}`).toBe('store-newer');
      continue;
    }
    expect(opened.value.pragma('integrity_check', { simple: true }), `seed ${seed}`).toBe('ok');
    expect(opened.value.pragma('foreign_key_check'), `seed ${seed}`).toEqual([]);
    const loss = readLoss(harmed);
    if (loss) {
      saved++;
      // What was kept can be worked with: each map is listed and each job opens.
      expect(listMaps(opened.value), `seed ${seed}`).toHaveLength(loss.keptMaps);
      for (const { id } of listJobs(opened.value)) expect(readJob(opened.value, id)).not.toBeNull();
    }
    opened.value.close();
  }
  expect(saved).toBeGreaterThan(15);
}, 200_000);

test('a sound store is opened as it is, and nothing is told', () => {
  const { connection, file } = filledShop();
  connection.close();
  const opened = openOrSalvage(file, now);
  expect(opened.ok && listMaps(opened.value).length).toBe(30);
  if (opened.ok) opened.value.close();
  expect(readLoss(file)).toBeNull();
  expect(openStore(file).ok).toBe(true);
});
