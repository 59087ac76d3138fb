import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { backupFolderOf } from '#db/backup/list-backups.ts';
import { takeBackup } from '#db/backup/take-backup.ts';
import { openStore } from '#db/open-store.ts';
import type { RequestName } from '#electron/contract/contract.ts';
import { openWorkshop, type Workshop } from '#electron/open-workshop.ts';
import { fillShop } from './fill-shop.ts';
import { type Measured, measure, tableLine } from './measure.ts';

/** `npm run bench:load`: a shop's years in one store. Prints a table; misses an aim with exit code 1. */
const size = { maps: 2_000, jobs: 20_000, photos: 5_000, photoBytes: 100_000 };
const mostMemoryMb = 900;
const folder = mkdtempSync(join(tmpdir(), 'undertrim-load-'));
const file = join(folder, 'undertrim.db');

const ask = (workshop: Workshop, name: RequestName, input: unknown): unknown => {
  const reply = workshop.answer(name, input);
  if (!reply.ok) throw new Error(`${name} ${reply.problem.code}`);
  return reply.value;
};

function start(): Workshop {
  const opened = openWorkshop(folder, join(folder, 'no-samples'));
  if (!opened.ok) throw new Error(opened.problem.code);
  return opened.value;
}

try {
  process.exitCode = (await load()) ? 0 : 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}

async function load(): Promise<boolean> {
  const fresh = openStore(file);
  if (!fresh.ok) throw new Error(fresh.problem.code);
  const filled = performance.now();
  fillShop(fresh.value, size);
  console.log(`Filled in ${((performance.now() - filled) / 1_000).toFixed(0)} s.`);
  fresh.value.close();
  console.log(
    `${(statSync(file).size / 1e6).toFixed(0)} MB, of which photos ${(size.photos * size.photoBytes) / 1e6} MB.`,
  );

  const results: Measured[] = [];
  // What is worked out once and kept (pictures of the maps, what jobs are searched by) is so after this.
  const first = start();
  await once(results, 'list for the very first time', null, () => ask(first, 'library.list', {}));
  await once(results, 'search for the very first time', null, () => ask(first, 'jobs.search', search('zzz')));
  await first.backups.settled();
  first.close();
  let workshop: Workshop | undefined;
  results.push(
    measure('start to list', 5, 1_500, () => {
      workshop?.close();
      workshop = start();
      JSON.stringify(ask(workshop, 'library.list', {}));
    }),
  );
  const open = workshop as Workshop | undefined;
  if (!open) throw new Error('nothing was started');
  await open.backups.settled();
  const named = ['stock 19', 'heater', 'tail lamp car', 'nowhere', 'model 7'];
  results.push(
    measure('search over all jobs', 15, 50, (round) => {
      ask(open, 'jobs.search', search(named[(round + 5) % named.length] as string));
    }),
    measure('open a job', 15, 300, (round) => {
      ask(open, 'job.open', { jobId: `job:j${(round + 3) * 977}` });
    }),
    measure('open a map', 15, 300, (round) => {
      ask(open, 'map.open', { mapId: `map:m${(round + 3) * 97}` });
    }),
  );
  open.close();
  const store = openStore(file);
  if (!store.ok) throw new Error(store.problem.code);
  let steps = 0;
  let longestMs = 0;
  let last = performance.now();
  const tick = (): void => {
    longestMs = Math.max(longestMs, performance.now() - last);
    last = performance.now();
    steps++;
  };
  await once(results, 'a backup, copied and checked', null, async () => {
    const taken = await takeBackup(
      store.value,
      backupFolderOf(folder),
      'asked',
      new Date().toISOString(),
      tick,
    );
    if (!taken.ok) throw new Error(taken.problem.code);
  });
  await once(results, 'vacuum', null, () => store.value.exec('VACUUM'));
  store.value.close();
  for (const each of results) console.log(tableLine(each));
  const memoryMb = process.resourceUsage().maxRSS / 1_000;
  console.log(
    `A backup told ${steps} times how far it was; the longest wait for it was ${longestMs.toFixed(0)} ms.`,
  );
  console.log(`At most ${memoryMb.toFixed(0)} MB of memory, ${mostMemoryMb} aimed at.`);
  return (
    memoryMb <= mostMemoryMb && results.every(({ medianMs, aimMs }) => aimMs === null || medianMs <= aimMs)
  );
}

function search(text: string): { readonly words: readonly object[] } {
  return { words: text.split(' ').map((word) => ({ text: word, codes: [] })) };
}

async function once(
  results: Measured[],
  name: string,
  aimMs: number | null,
  work: () => unknown,
): Promise<void> {
  const started = performance.now();
  await work();
  const ms = performance.now() - started;
  results.push({ name, medianMs: ms, p95Ms: ms, runs: 1, aimMs });
}
