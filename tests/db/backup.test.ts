import { copyFileSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { mapToExchange } from '#core/map/exchange.ts';
import { backupName, backupReasons, readBackupName } from '#db/backup/backup-name.ts';
import { backupsToDrop } from '#db/backup/backups-to-drop.ts';
import { checkCopy } from '#db/backup/check-copy.ts';
import { type Backup, listBackups } from '#db/backup/list-backups.ts';
import { prepareRestore } from '#db/backup/prepare-restore.ts';
import { asideFolderOf, comingOf, finishSwap, swapStore } from '#db/backup/swap-store.ts';
import { takeBackup } from '#db/backup/take-backup.ts';
import { addMap, readMap } from '#db/map-store.ts';
import { keepPicture, readPicture } from '#db/picture-store.ts';
import { sample } from '#tests/sample.ts';
import { openAt, openFreshStore } from './open-fresh-store.ts';

const map = mapToExchange(sample.map);
const now = '2026-01-05T09:00:00.000Z';

function shop() {
  const { connection, file } = openFreshStore();
  addMap(connection, map, now);
  const sha256 = keepPicture(connection, 'image/png', Buffer.alloc(50_000, 7));
  return { connection, file, sha256, folder: join(dirname(file), 'backups') };
}

test('a backup holds everything, and is told by when and why it was made', async () => {
  const { connection, file, sha256, folder } = shop();
  const shares: number[] = [];
  const taken = await takeBackup(connection, folder, 'daily', now, {
    onShare: (share) => shares.push(share),
  });
  expect(taken).toMatchObject({ ok: true, value: { takenAt: now, reason: 'daily' } });
  expect(listBackups(folder)).toHaveLength(1);
  expect(shares.every((share, i) => share >= (shares[i - 1] ?? 0) && share <= 1)).toBe(true);
  connection.close();
  const fileName = listBackups(folder)[0]?.fileName ?? '';
  expect(prepareRestore(file, folder, fileName)).toMatchObject({ ok: true });
  swapStore(file, asideFolderOf(file, now));
  const restored = openAt(file);
  expect(readMap(restored, map.id)).toEqual(map);
  expect(readPicture(restored, sha256)).toMatchObject({ ok: true, value: { bytes: { length: 50_000 } } });
  expect(readdirSync(join(dirname(file), 'set-aside'))).toHaveLength(1);
});

test('edits made while a backup runs are kept, and the backup is sound', async () => {
  const { connection, folder } = shop();
  for (let i = 0; i < 60; i++) keepPicture(connection, 'image/png', Buffer.alloc(100_000, i + 10));
  const running = takeBackup(connection, folder, 'asked', now);
  for (let i = 0; i < 20; i++) {
    keepPicture(connection, 'image/png', Buffer.alloc(3_000, i + 100));
    await new Promise((resolve) => setImmediate(resolve));
  }
  expect(await running).toMatchObject({ ok: true });
  expect(connection.prepare('SELECT count(*) FROM picture_bytes').pluck().get()).toBe(81);
});

test('a copy with a letter gone wrong in a document or a picture is no backup', async () => {
  for (const wrong of [
    `UPDATE map_record SET body = replace(body, '"', '') WHERE kind = 'segment'`,
    `UPDATE picture_bytes SET bytes = zeroblob(9)`,
  ]) {
    const { connection, folder } = shop();
    connection.exec(wrong);
    expect(await takeBackup(connection, folder, 'start', now)).toMatchObject({
      ok: false,
      problem: { code: 'store-damaged' },
    });
    expect(readdirSync(folder)).toEqual([]);
  }
});

test('a file that is no store of ours is no backup', async () => {
  const { file } = openFreshStore();
  const letter = join(dirname(file), 'letter');
  writeFileSync(letter, 'a letter to the workshop '.repeat(400));
  expect(await checkCopy(letter)).toMatchObject({ ok: false, problem: { code: 'store-damaged' } });
  expect(readFileSync(letter, 'utf8')).toContain('workshop');
});

test('a backup that is not there, or went bad since, is refused and the store stays', async () => {
  const { connection, file, folder } = shop();
  const taken = await takeBackup(connection, folder, 'asked', now);
  if (!taken.ok) throw new Error(taken.problem.code);
  expect(prepareRestore(file, folder, '../undertrim.db')).toMatchObject({ problem: { code: 'not-found' } });
  const backup = join(folder, taken.value.fileName);
  const bytes = readFileSync(backup);
  writeFileSync(backup, bytes.fill(0xa5, 4096, 4096 * 5));
  expect(prepareRestore(file, folder, taken.value.fileName)).toMatchObject({
    problem: { code: 'store-damaged' },
  });
  expect(statSync(comingOf(file), { throwIfNoEntry: false })).toBeUndefined();
  expect(readMap(connection, map.id)).toEqual(map);
});

test('a change of store that was cut off is finished at the next start', async () => {
  const { connection, file, folder } = shop();
  const taken = await takeBackup(connection, folder, 'asked', now);
  if (!taken.ok) throw new Error(taken.problem.code);
  connection.close();
  copyFileSync(join(folder, taken.value.fileName), comingOf(file));
  writeFileSync(`${file}-wal`, 'of the old store');
  expect(finishSwap(file, now)).toBe(true);
  expect(finishSwap(file, now)).toBe(false);
  expect(readMap(openAt(file), map.id)).toEqual(map);
  expect(readdirSync(asideFolderOf(file, now)).sort()).toEqual(['undertrim.db', 'undertrim.db-wal']);
});

test('a backup’s name says when and why, and no other name is taken for one', () => {
  for (const reason of backupReasons) {
    expect(readBackupName(backupName(now, reason))).toEqual({ takenAt: now, reason });
  }
  for (const name of ['undertrim.db', `${backupName(now, 'start')}.part`, '2026 start.db', '']) {
    expect(readBackupName(name)).toBeNull();
  }
});

const hourMs = 3_600_000;
const agedBackups = (ages: readonly number[]): Backup[] =>
  [...new Set(ages)].map((hours) => {
    const takenAt = new Date(Date.parse(now) - hours * hourMs).toISOString();
    return { fileName: backupName(takenAt, 'start'), takenAt, reason: 'start', bytes: 1 };
  });

test('backups never pile up, and the newest always stays', () => {
  fc.assert(
    fc.property(fc.array(fc.integer({ min: 0, max: 24 * 400 }), { maxLength: 300 }), (ages) => {
      const backups = agedBackups(ages);
      const dropped = backupsToDrop(backups, now);
      const kept = backups.filter((each) => !dropped.includes(each));
      expect(kept.length).toBeLessThanOrEqual(16);
      expect(kept.length).toBeGreaterThanOrEqual(Math.min(4, backups.length));
      const newest = [...backups].sort((a, b) => b.takenAt.localeCompare(a.takenAt)).slice(0, 4);
      expect(newest.every((each) => kept.includes(each))).toBe(true);
      expect(backupsToDrop(kept, now)).toEqual([]);
    }),
    { seed: 8, numRuns: 200 },
  );
});

test('after a year of daily starts there is one for each of the last seven days and the last five weeks', () => {
  const backups = agedBackups(Array.from({ length: 365 }, (_, day) => day * 24));
  const dropped = new Set(backupsToDrop(backups, now));
  const days = backups.flatMap((each, day) => (dropped.has(each) ? [] : day));
  expect(days).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 14, 21, 28]);
});
