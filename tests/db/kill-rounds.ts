import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { assert } from '#core/quantity/assert.ts';
import { type Chance, seededChance } from '#core/quantity/chance.ts';
import type { JobId, MapId } from '#core/quantity/id.ts';
import { checkCopy } from '#db/backup/check-copy.ts';
import { backupFolderOf, listBackups } from '#db/backup/list-backups.ts';
import { finishSwap } from '#db/backup/swap-store.ts';
import type { Connection } from '#db/connection.ts';
import { readJob } from '#db/job-store.ts';
import { readMap } from '#db/map-store.ts';
import { readPicture } from '#db/picture-store.ts';
import { readLoss } from '#db/salvage/loss-store.ts';
import { openOrSalvage } from '#db/salvage/open-or-salvage.ts';

/** What a number of kills came to. */
export interface KillCount {
  kills: number;
  /** Kills before the store was open: while it was lifted from an older version, or a kill's log was read. */
  whileOpening: number;
  /** Things said to be kept, each looked for after every later kill in its folder. */
  told: number;
  backups: number;
}

/** Kills in one folder before a new one is begun, so that later ones meet what earlier ones left. */
const killsPerFolder = 10;
/** How many things it may have told as kept before it is killed. */
const mostToldFirst = 15;
const fixtures = join(import.meta.dirname, 'fixtures');

/**
 * Kills a working program again and again at moments drawn from a seed, every tenth time on a store of an
 * older version that is being lifted, and throws when anything it said was kept is not there, the store is
 * not sound or a backup is not whole.
 */
export async function killRounds(rounds: number, seed: number, parent: string): Promise<KillCount> {
  const chance = seededChance(seed);
  const count: KillCount = { kills: 0, whileOpening: 0, told: 0, backups: 0 };
  let told: string[] = [];
  let folder = '';
  let looked = new Set<string>();
  for (let round = 0; round < rounds; round++) {
    if (round % killsPerFolder === 0) {
      if (folder) rmSync(folder, { recursive: true, force: true });
      folder = join(parent, `kills-${round}`);
      told = [];
      looked = new Set();
      makeOlderStore(folder, 1 + Math.floor(chance() * 2));
    }
    const lifting = round % killsPerFolder === 0;
    const heard = await workAndKill(folder, Math.floor(chance() * 1e9), lifting, chance);
    if (!heard.includes('opened')) count.whileOpening++;
    const more = heard.filter((line) => line !== 'ready' && line !== 'opened');
    told.push(...more);
    count.kills++;
    count.told += more.length;
    count.backups = Math.max(
      count.backups,
      await lookAfter(folder, told, looked, `seed ${seed}, kill ${round}`),
    );
  }
  if (folder) rmSync(folder, { recursive: true, force: true });
  return count;
}

/** A store as an older program left it, with some megabytes in it so that lifting takes a while. */
function makeOlderStore(folder: string, version: number): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const store = new Database(join(folder, 'undertrim.db'));
  store.exec(readFileSync(join(fixtures, `version-000${version}.sql`), 'utf8'));
  const keep = store.prepare('INSERT INTO picture_bytes (sha256, media_type, bytes) VALUES (?, ?, ?)');
  for (let i = 0; i < 4; i++) {
    const bytes = Buffer.alloc(1_000_000, i);
    keep.run(createHash('sha256').update(bytes).digest('hex'), 'image/png', bytes);
  }
  store.close();
}

/** Lines the program told whole before it was killed. */
async function workAndKill(
  folder: string,
  seed: number,
  lifting: boolean,
  chance: Chance,
): Promise<string[]> {
  const program = join(import.meta.dirname, 'work-until-killed.ts');
  const child = spawn(process.execPath, [program, folder, String(seed)], {
    stdio: ['ignore', 'pipe', 'pipe'],
  });
  let out = '';
  let complaint = '';
  child.stdout.on('data', (part: Buffer) => {
    out += part.toString();
  });
  child.stderr.on('data', (part: Buffer) => {
    complaint += part.toString();
  });
  const ended = new Promise((resolve) => child.once('close', resolve));
  const opening = lifting || chance() < 0.15;
  // By lines and not by the clock alone, so that a busy machine gets as far as an idle one.
  const lines = opening ? 1 : 2 + Math.floor(chance() * mostToldFirst);
  while (out.split('\n').length <= lines && child.exitCode === null) await wait(2);
  await wait(chance() * (opening ? 90 : 40));
  const early = child.exitCode !== null;
  child.kill('SIGKILL');
  await ended;
  assert(!early, `it ended by itself: ${complaint.slice(0, 2_000)}`);
  return out.slice(0, out.lastIndexOf('\n')).split('\n');
}

/** Starts again on the folder and looks for everything told; gives how many backups there are. */
async function lookAfter(
  folder: string,
  told: readonly string[],
  looked: Set<string>,
  when: string,
): Promise<number> {
  const file = join(folder, 'undertrim.db');
  const now = new Date().toISOString();
  assert(!finishSwap(file, now), `${when}: no change of store was under way`);
  const opened = openOrSalvage(file, now);
  assert(opened.ok, `${when}: the store opens`);
  const connection = opened.value;
  assert(readLoss(file) === null, `${when}: the store is not damaged`);
  assert(connection.pragma('integrity_check', { simple: true }) === 'ok', `${when}: the store is sound`);
  assert((connection.pragma('foreign_key_check') as unknown[]).length === 0, `${when}: references hold`);
  for (const line of told) assert(isThere(connection, line.split(' ')), `${when}: “${line}” is there`);
  connection.close();
  const backups = listBackups(backupFolderOf(folder));
  for (const { fileName } of backups) {
    if (looked.has(fileName)) continue;
    looked.add(fileName);
    const checked = await checkCopy(join(backupFolderOf(folder), fileName));
    assert(checked.ok, `${when}: the backup ${fileName} is whole`);
  }
  assert(statSync(file).size > 0, `${when}: the store is a file`);
  return backups.length;
}

function isThere(connection: Connection, [kind, id, ...figures]: readonly string[]): boolean {
  if (kind === 'photo') return readPicture(connection, id as string).ok;
  if (kind === 'job') return (readJob(connection, id as JobId)?.entries.length ?? -1) >= Number(figures[0]);
  const map = readMap(connection, id as MapId);
  if (kind === 'map') return map?.nodes.length === Number(figures[0]);
  const far = map?.nodes.find((node) => node.id === 'node:far');
  return (map?.revision ?? -1) >= Number(figures[0]) && (far?.at.yMm ?? -1) >= Number(figures[1]);
}
