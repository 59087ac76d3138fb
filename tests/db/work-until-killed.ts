import { writeSync } from 'node:fs';
import { join } from 'node:path';
import { mapToExchange } from '#core/map/exchange.ts';
import { patchOf } from '#core/map/patch.ts';
import { type Chance, seededChance } from '#core/quantity/chance.ts';
import type { MapId } from '#core/quantity/id.ts';
import type { RequestInput, RequestName, RequestOutput } from '#electron/contract/contract.ts';
import { openWorkshop, type Workshop } from '#electron/open-workshop.ts';
import { pngHead } from '#tests/generated/picture-heads.ts';
import { sample } from '#tests/sample.ts';

/**
 * Works on a data folder as a page would, drawn from a seed, telling each thing the host said was kept, until
 * this process is killed: edits, imports, job entries, photos and backups; or again and again going back to a
 * backup, or writing the data file anew, telling when that begins and when it is done.
 */
const [folder = '', seed = '1', doing = 'work'] = process.argv.slice(2);
const chance: Chance = seededChance(Number(seed));
const tell = (...words: readonly (string | number)[]): void => {
  writeSync(1, `${words.join(' ')}\n`);
};

tell('ready');
const workshop = opened();
tell('opened');

function opened(): Workshop {
  const made = openWorkshop(folder, join(folder, 'no-samples'));
  if (!made.ok) throw new Error(made.problem.code);
  return made.value;
}

function ask<N extends RequestName>(name: N, input: RequestInput<N>): RequestOutput<N> {
  const reply = workshop.answer(name, input);
  if (!reply.ok) throw new Error(`${name} ${reply.problem.code}`);
  return reply.value as RequestOutput<N>;
}

/** Brings in a map of many runs, as a file would; told by its id. */
function bringInMap(): MapId {
  const [node] = mapToExchange(sample.map).nodes;
  const more = Array.from({ length: 200 }, (_, i) => ({ ...node, id: `node:more${i}` }));
  const map = mapToExchange(sample.map);
  const text = JSON.stringify({ ...map, nodes: [...map.nodes, ...more] });
  const { mapId } = ask('file.bringIn', { text, store: true });
  if (!mapId) throw new Error('no map came in');
  tell('map', mapId, map.nodes.length + more.length);
  return mapId;
}

function edit(mapId: MapId): void {
  const { map } = ask('map.open', { mapId });
  const node = map.nodes.find(({ id }) => id === 'node:far');
  if (!node) throw new Error('the node is gone');
  const after = { ...node, at: { ...node.at, yMm: node.at.yMm + 1 } };
  const transaction = {
    label: 'edit.moveNode',
    origin: 'user' as const,
    patch: patchOf({ changed: [[node, after]] }),
    selectionBefore: [],
    selectionAfter: [],
  };
  const { revision } = ask('map.commit', { mapId, expectedRevision: map.revision, transaction });
  tell('edit', mapId, revision, after.at.yMm);
}

function writeEntry(mapId: MapId): void {
  const { vehicle, complaint, failureType, circuitId, alsoFailingCircuitIds, workingCircuitIds } = sample.job;
  const intake = { vehicle, complaint, failureType, circuitId, alsoFailingCircuitIds, workingCircuitIds };
  const { jobId } = ask('job.create', { mapId, ...intake });
  const entry = {
    id: `entry:${jobId.slice(4)}`,
    at: '2026-01-05T09:30:00Z',
    type: 'note',
    text: 'Wet carpet',
  };
  const { job } = ask('job.open', { jobId });
  const { entryCount } = ask('job.append', {
    jobId,
    expectedEntries: job.entries.length,
    entries: [entry as RequestInput<'job.append'>['entries'][number]],
  });
  tell('job', jobId, entryCount);
}

function keepPhoto(): void {
  const start = pngHead(800, 600);
  const rest = Buffer.alloc(1_000 + Math.floor(chance() * 1_500_000), Math.floor(chance() * 256));
  rest.writeDoubleLE(chance(), 0);
  const { sha256 } = ask('picture.keep', { base64: Buffer.concat([start, rest]).toString('base64') });
  tell('photo', sha256);
}

/** A backup asked for, by its file name once it is whole. */
async function backUp(): Promise<string> {
  ask('backup.take', {});
  await workshop.backups.settled();
  const { backups, ended } = ask('backup.list', {});
  const made = backups.find(({ reason }) => reason === 'asked');
  if (!made || ended?.trouble) throw new Error(`no backup: ${ended?.trouble}`);
  return made.fileName;
}

async function overWell(kind: 'restore' | 'compact'): Promise<void> {
  await workshop.backups.settled();
  const { ended } = ask('backup.list', {});
  if (ended?.doing !== kind || ended.trouble) throw new Error(`${kind}: ${ended?.trouble}`);
}

async function goBackAgain(): Promise<void> {
  await workshop.backups.settled();
  const map = bringInMap();
  const fileName = await backUp();
  tell('backup', fileName);
  edit(map);
  keepPhoto();
  tell('going-back', fileName);
  ask('backup.restore', { fileName });
  await overWell('restore');
  tell('went-back', fileName);
}

async function makeSmaller(): Promise<void> {
  await workshop.backups.settled();
  edit(bringInMap());
  keepPhoto();
  tell('anew-begun');
  ask('store.compact', {});
  await overWell('compact');
  tell('anew-done');
}

async function work(): Promise<never> {
  let mapId = bringInMap();
  for (;;) {
    const drawn = chance();
    if (drawn < 0.5) edit(mapId);
    else if (drawn < 0.6) mapId = bringInMap();
    else if (drawn < 0.75) writeEntry(mapId);
    else if (drawn < 0.95) keepPhoto();
    else {
      ask('backup.take', {});
      await workshop.backups.settled();
    }
    // Lets what a running backup tells come in between two pieces of work.
    await new Promise((resolve) => setImmediate(resolve));
  }
}

if (doing === 'going-back') for (;;) await goBackAgain();
if (doing === 'anew') for (;;) await makeSmaller();
await work();
