import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as wait } from 'node:timers/promises';
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
  const waits: string[] = [];
  await once(results, 'a backup, copied and checked', null, async () => {
    ask(open, 'backup.take', {});
    waits.push(await worstWait('a backup', open));
  });
  ask(open, 'map.remove', { mapId: 'map:m0' });
  await once(results, 'writing the data file anew', null, async () => {
    ask(open, 'store.compact', {});
    waits.push(await worstWait('writing anew', open));
  });
  open.close();
  for (const each of results) console.log(tableLine(each));
  const memoryMb = process.resourceUsage().maxRSS / 1_000;
  for (const line of waits) console.log(line);
  console.log(`At most ${memoryMb.toFixed(0)} MB of memory, ${mostMemoryMb} aimed at.`);
  return (
    memoryMb <= mostMemoryMb && results.every(({ medianMs, aimMs }) => aimMs === null || medianMs <= aimMs)
  );
}

/**
 * Until the work on the data file is over: how long the host ever took to get to the next request, and the
 * longest an edit that is on the disk when it is answered took meanwhile.
 */
async function worstWait(doing: string, workshop: Workshop): Promise<string> {
  const loop = monitorEventLoopDelay({ resolution: 5 });
  loop.enable();
  let over = false;
  void workshop.backups.settled().then(() => {
    over = true;
  });
  const edits: number[] = [];
  let told = 0;
  let share = 0;
  while (!over) {
    const { running } = workshop.backups.state();
    if (running !== null && running > share) told++;
    share = running ?? share;
    // Nothing is written while the file is written anew, for then that would begin again.
    if (doing === 'a backup') {
      const started = performance.now();
      ask(workshop, 'place.keep', { key: 'bench', text: String(told) });
      edits.push(performance.now() - started);
    }
    await wait(50);
  }
  loop.disable();
  const { ended } = workshop.backups.state();
  if (ended?.trouble) throw new Error(`${doing}: ${ended.trouble}`);
  const longest =
    edits.length > 0 ? `, the longest of ${edits.length} edits ${Math.max(...edits).toFixed(0)} ms` : '';
  return `During ${doing}: told ${told} times how far it is; the host’s longest pause was ${(loop.max / 1e6).toFixed(0)} ms${longest}.`;
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
