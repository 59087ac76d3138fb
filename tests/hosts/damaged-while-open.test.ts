import { createHash } from 'node:crypto';
import { closeSync, openSync, readdirSync, statSync, utimesSync, writeSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { expect, onTestFinished, test } from 'vitest';
import { noteClosed } from '#db/closed-store.ts';
import type { RequestName, RequestOutput } from '#electron/contract/contract.ts';
import { openWorkshop, type Workshop } from '#electron/open-workshop.ts';
import { pngHead } from '#tests/generated/picture-heads.ts';
import { sample } from '#tests/sample.ts';
import { freshFolder } from './fresh-folder.ts';

function openAt(folder: string): Workshop {
  const workshop = openWorkshop(folder, join(folder, 'no-samples'));
  if (!workshop.ok) throw new Error(workshop.problem.code);
  onTestFinished(() => workshop.value.close());
  return workshop.value;
}

function ask<N extends RequestName>(workshop: Workshop, name: N, input: unknown): RequestOutput<N> {
  const reply = workshop.answer(name, input);
  if (!reply.ok) throw new Error(reply.problem.code);
  return reply.value as RequestOutput<N>;
}

const photo = (filled: number): Buffer => Buffer.concat([pngHead(800, 600), Buffer.alloc(40_000, filled)]);

/** A shop that was closed well, with a job and two photos; the hash of the first photo. */
async function closedShop() {
  const folder = freshFolder();
  const workshop = openAt(folder);
  const { mapId } = ask(workshop, 'map.create', { name: 'Van', bodyStyle: 'van', driveSide: 'right' });
  const { vehicle, complaint, failureType } = sample.job;
  const intake = { vehicle, complaint, failureType, circuitId: null };
  const { jobId } = ask(workshop, 'job.create', {
    ...{ mapId, ...intake, alsoFailingCircuitIds: [], workingCircuitIds: [] },
  });
  for (const filled of [1, 2]) {
    ask(workshop, 'picture.keep', { base64: photo(filled).toString('base64') });
  }
  await workshop.backups.settled();
  workshop.close();
  const sha256 = createHash('sha256').update(photo(1)).digest('hex');
  return { folder, file: join(folder, 'undertrim.db'), jobId, sha256 };
}

/** Turns a whole page of the file into rubbish as a dying disk does: nobody wrote to it, by its time. */
function spoilUnseen(file: string, page: number): void {
  const time = new Date('2026-01-05T09:00:00Z');
  utimesSync(file, time, time);
  noteClosed(file);
  const handle = openSync(file, 'r+');
  writeSync(handle, Buffer.alloc(4_096, 0xa5), 0, 4_096, (page - 1) * 4_096);
  closeSync(handle);
  utimesSync(file, time, time);
}

/** The last page of the first photo; what it says of the next one is wrong then, or its bytes are. */
function photoPage(file: string, which: 'first' | 'last'): number {
  const store = new Database(file);
  const order = which === 'first' ? 'ASC' : 'DESC';
  const sql = `SELECT pageno FROM dbstat WHERE name = 'picture_bytes' AND pagetype = 'overflow' AND path LIKE '/000/000+%' ORDER BY path ${order}`;
  const page = store.prepare(sql).pluck().get() as number;
  store.close();
  return page;
}

test('a damaged photo is told when it is met, stops no job and no start, and the next start saves the rest', async () => {
  const { folder, file, jobId, sha256 } = await closedShop();
  spoilUnseen(file, photoPage(file, 'first'));
  const met = openAt(folder);
  expect(ask(met, 'loss.read', {})).toEqual({ loss: null });
  expect(ask(met, 'job.open', { jobId }).job.id).toBe(jobId);
  expect(met.answer('picture.read', { sha256 })).toMatchObject({ problem: { code: 'store-damaged' } });
  expect(ask(met, 'backup.list', {}).trouble).toBe('damaged');
  expect(ask(met, 'library.list', {}).jobs).toHaveLength(1);
  met.close();
  const saved = openAt(folder);
  expect(ask(saved, 'loss.read', {}).loss).toMatchObject({
    keptMaps: 1,
    keptJobs: 1,
    lost: { maps: [], jobs: [] },
  });
  expect(ask(saved, 'job.open', { jobId }).job.id).toBe(jobId);
});

test('a backup reads everything, says what a start did not look at, and keeps the earlier backups', async () => {
  const { folder, file, sha256 } = await closedShop();
  spoilUnseen(file, photoPage(file, 'last'));
  const workshop = openAt(folder);
  await workshop.backups.settled();
  expect(workshop.answer('picture.read', { sha256 })).toMatchObject({ problem: { code: 'store-damaged' } });
  const before = readdirSync(join(folder, 'backups'));
  ask(workshop, 'map.create', { name: 'Second', bodyStyle: 'van', driveSide: 'right' });
  ask(workshop, 'backup.take', {});
  await workshop.backups.settled();
  expect(ask(workshop, 'backup.list', {})).toMatchObject({
    trouble: 'damaged',
    doing: null,
    ended: { doing: 'backup', trouble: 'damaged' },
  });
  expect(readdirSync(join(folder, 'backups'))).toEqual(before);
});

test('the data file gives back what removed things left empty, and everything else is still in it', async () => {
  const { folder, file, jobId, sha256 } = await closedShop();
  const store = new Database(file);
  store.exec('CREATE TABLE heavy (x); INSERT INTO heavy VALUES (zeroblob(3000000)); DROP TABLE heavy');
  store.close();
  const workshop = openAt(folder);
  await workshop.backups.settled();
  const { store: before } = ask(workshop, 'backup.list', {});
  expect(before.emptyBytes).toBeGreaterThan(2_900_000);
  ask(workshop, 'store.compact', {});
  expect(workshop.answer('store.compact', {})).toMatchObject({ problem: { code: 'store-busy' } });
  await workshop.backups.settled();
  const { store: after, ended } = ask(workshop, 'backup.list', {});
  expect(ended).toEqual({
    doing: 'compact',
    trouble: null,
    bytesBefore: before.bytes,
    bytesAfter: after.bytes,
  });
  expect(after.emptyBytes).toBe(0);
  expect(after.bytes).toBeLessThan(before.bytes - 2_900_000);
  expect(statSync(file).size).toBe(after.bytes);
  expect(ask(workshop, 'job.open', { jobId }).job.id).toBe(jobId);
  expect(workshop.answer('picture.read', { sha256 })).toMatchObject({ ok: true });
  ask(workshop, 'map.create', { name: 'After', bodyStyle: 'van', driveSide: 'right' });
  expect(readdirSync(folder).filter((name) => name.includes('.part'))).toEqual([]);
});

test('an edit made while the data file is written anew is kept', async () => {
  const { folder } = await closedShop();
  const workshop = openAt(folder);
  await workshop.backups.settled();
  ask(workshop, 'store.compact', {});
  ask(workshop, 'map.create', { name: 'Meanwhile', bodyStyle: 'van', driveSide: 'right' });
  await workshop.backups.settled();
  expect(ask(workshop, 'backup.list', {}).ended).toMatchObject({ doing: 'compact', trouble: null });
  expect(
    ask(workshop, 'library.list', {})
      .maps.map(({ name }) => name)
      .sort(),
  ).toEqual(['Meanwhile', 'Van']);
});
