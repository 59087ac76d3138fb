import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import {
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeSync,
} from 'node:fs';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import Database from 'better-sqlite3';
import { assert } from '#core/quantity/assert.ts';
import { type Chance, seededChance } from '#core/quantity/chance.ts';
import { checkCopy } from '#db/backup/check-copy.ts';
import { backupFolderOf, listBackups } from '#db/backup/list-backups.ts';
import { comingOf } from '#db/backup/swap-store.ts';
import { partOf } from '#db/backup/whole-file.ts';
import { migrationSteps } from '#db/migrations/index.ts';
import { forgetLoss, readLoss } from '#db/salvage/loss-store.ts';
import { openHeld } from '#electron/open-workshop.ts';
import { missingOf, TellTale } from './told-things.ts';

/** In the middle of what a program is killed. */
export const killMoments = ['work', 'lifting', 'going-back', 'anew', 'salvage'] as const;
export type KillMoment = (typeof killMoments)[number];

/** What a number of kills came to. */
export interface KillCount {
  kills: number;
  /** Kills that were seen to fall in the middle of each; backing up goes on beside the others. */
  readonly during: Record<Exclude<KillMoment, 'work'> | 'backing up', number>;
  /** Things said to be kept, each looked for after every later kill in its folder. */
  told: number;
}

/** Kills in one folder before a new one is begun, so that later ones meet what earlier ones left. */
const killsPerFolder = 10;
/** How many things it may have told as kept before it is killed. */
const mostToldFirst = 15;
const fixtures = join(import.meta.dirname, 'fixtures');
const head = migrationSteps.at(-1)?.version ?? 0;
/** How long after the last line heard a kill may come, in ms: about as long as each of them takes. */
const patienceMs: Readonly<Record<KillMoment, number>> = {
  work: 40,
  lifting: 250,
  'going-back': 500,
  anew: 500,
  salvage: 450,
};

/**
 * Kills a working program again and again at moments drawn from a seed: in the middle of edits and backups, of
 * lifting an older store, of going back to a backup, of writing the file anew, and of saving what can be read of
 * a damaged one. Throws when anything it said was kept is not there, the store is not sound, a loss was not told
 * or a backup is not whole.
 */
export async function killRounds(rounds: number, seed: number, parent: string): Promise<KillCount> {
  const chance = seededChance(seed);
  const during = { lifting: 0, 'going-back': 0, anew: 0, salvage: 0, 'backing up': 0 };
  const count: KillCount = { kills: 0, during, told: 0 };
  let tale = new TellTale();
  let folder = '';
  let looked = new Set<string>();
  for (let round = 0; round < rounds; round++) {
    const moment = round % killsPerFolder === 0 ? 'lifting' : drawMoment(chance);
    if (moment === 'lifting') {
      if (folder) rmSync(folder, { recursive: true, force: true });
      folder = join(parent, `kills-${round}`);
      tale = new TellTale();
      looked = new Set();
      makeOlderStore(folder, 1 + Math.floor(chance() * (head - 1)));
    }
    const file = join(folder, 'undertrim.db');
    if (moment === 'salvage') spoil(file, round);
    const heard = await workAndKill(folder, Math.floor(chance() * 1e9), moment, chance);
    const unfinished = tale.hear(heard);
    if (unfinished) during[unfinished]++;
    if (moment === 'lifting' && versionOf(file) < head) during.lifting++;
    if (moment === 'salvage' && [partOf(comingOf(file)), comingOf(file)].some((name) => existsSync(name))) {
      during.salvage++;
    }
    if (isBackingUp(backupFolderOf(folder))) during['backing up']++;
    count.kills++;
    count.told += tale.toldSince(heard);
    await lookAfter(file, tale, looked, moment, `seed ${seed}, kill ${round}, ${moment}`);
  }
  if (folder) rmSync(folder, { recursive: true, force: true });
  return count;
}

function drawMoment(chance: Chance): KillMoment {
  const drawn = chance();
  if (drawn < 0.45) return 'work';
  return drawn < 0.65 ? 'going-back' : drawn < 0.83 ? 'anew' : 'salvage';
}

/** A store as an older program left it, with some megabytes in it so that lifting takes a while. */
function makeOlderStore(folder: string, version: number): void {
  rmSync(folder, { recursive: true, force: true });
  mkdirSync(folder, { recursive: true });
  const store = new Database(join(folder, 'undertrim.db'));
  store.exec(readFileSync(join(fixtures, `version-000${version}.sql`), 'utf8'));
  for (let i = 0; i < 4; i++) keepUntold(store, i);
  store.close();
}

/** A picture no program told of, so that it may be spoiled. */
function keepUntold(store: Database.Database, filled: number): void {
  const bytes = Buffer.alloc(1_000_000, filled);
  bytes.writeDoubleLE(filled, 0);
  store
    .prepare('INSERT OR IGNORE INTO picture_bytes (sha256, media_type, bytes) VALUES (?, ?, ?)')
    .run(createHash('sha256').update(bytes).digest('hex'), 'image/png', bytes);
}

/** Turns a page in the middle of a picture no program told of into rubbish. */
function spoil(file: string, round: number): void {
  const store = new Database(file);
  keepUntold(store, 100 + round);
  const pages =
    store.prepare(`SELECT pageno FROM dbstat WHERE name = 'picture_bytes' AND pagetype = 'overflow'
    ORDER BY path DESC LIMIT 1 OFFSET 100`);
  const page = pages.pluck().get() as number;
  store.close();
  const handle = openSync(file, 'r+');
  writeSync(handle, Buffer.alloc(4_096, 0xa5), 0, 4_096, (page - 1) * 4_096);
  closeSync(handle);
}

/** The version a store stands at; 0 where a change of its head was cut off and is to be taken back first. */
function versionOf(file: string): number {
  const store = new Database(file, { readonly: true });
  try {
    return store.pragma('user_version', { simple: true }) as number;
  } catch {
    return 0;
  } finally {
    store.close();
  }
}

const isBackingUp = (folder: string): boolean =>
  existsSync(folder) && readdirSync(folder).some((name) => name.endsWith('.part'));

/** Lines the program told whole before it was killed. */
async function workAndKill(
  folder: string,
  seed: number,
  moment: KillMoment,
  chance: Chance,
): Promise<string[]> {
  const program = join(import.meta.dirname, 'work-until-killed.ts');
  const child = spawn(process.execPath, [program, folder, String(seed), moment], {
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
  const opening = moment === 'lifting' || moment === 'salvage' || (moment === 'work' && chance() < 0.1);
  // By what was told and not by the clock alone, so that a busy machine gets as far as an idle one.
  const begun = moment === 'going-back' ? 'going-back ' : moment === 'anew' ? 'anew-begun' : null;
  const lines = opening ? 1 : 2 + Math.floor(chance() * mostToldFirst);
  const isFarEnough = (): boolean => (begun ? out.includes(begun) : out.split('\n').length > lines);
  while (!isFarEnough() && child.exitCode === null) await wait(2);
  await wait(chance() * (opening && moment === 'work' ? 90 : patienceMs[moment]));
  const early = child.exitCode !== null;
  child.kill('SIGKILL');
  await ended;
  assert(!early, `it ended by itself: ${complaint.slice(0, 2_000)}`);
  return out.slice(0, out.lastIndexOf('\n')).split('\n');
}

/** Starts again on the folder and looks for everything told. */
async function lookAfter(
  file: string,
  tale: TellTale,
  looked: Set<string>,
  moment: KillMoment,
  when: string,
): Promise<void> {
  const opened = openHeld(file, new Date().toISOString());
  assert(opened.ok, `${when}: the store opens`);
  const connection = opened.value;
  assert((readLoss(file) !== null) === (moment === 'salvage'), `${when}: a loss is told where there is one`);
  forgetLoss(file);
  assert(connection.pragma('integrity_check', { simple: true }) === 'ok', `${when}: the store is sound`);
  assert((connection.pragma('foreign_key_check') as unknown[]).length === 0, `${when}: references hold`);
  const missing = tale.settle((told) => missingOf(connection, told));
  assert(missing === null, `${when}: “${missing}” is there`);
  connection.close();
  const backups = backupFolderOf(join(file, '..'));
  for (const { fileName } of listBackups(backups)) {
    if (looked.has(fileName)) continue;
    looked.add(fileName);
    const checked = await checkCopy(join(backups, fileName));
    assert(checked.ok, `${when}: the backup ${fileName} is whole`);
  }
}
