import { expect, test } from 'vitest';
import { type Job, type JobEntry, jobSchema } from '#core/job/job-document.ts';
import { jobFacts } from '#core/job/job-facts.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import { mapToExchange } from '#core/map/exchange.ts';
import { patchOf } from '#core/map/patch.ts';
import { type Chance, seededChance } from '#core/quantity/chance.ts';
import type { MapId } from '#core/quantity/id.ts';
import type { Connection } from '#db/connection.ts';
import { listJobs } from '#db/job-list-store.ts';
import { indexChangedJobs } from '#db/job-search-index.ts';
import { type SearchWord, searchJobs } from '#db/job-search-store.ts';
import { addJob, appendEntries, changeIntake, readJob } from '#db/job-store.ts';
import { commitTransaction } from '#db/map-history-store.ts';
import { addMap, readMap, removeMap } from '#db/map-store.ts';
import { wholeJob } from '#tests/core/job/closing-record.ts';
import { sample } from '#tests/sample.ts';
import { openFreshStore } from './open-fresh-store.ts';

const worked = mapToExchange(sample.map);
const now = '2026-01-05T09:00:00.000Z';
const parts = [
  ...['Heizung fällt aus', 'STRASSE naß', 'Straße', 'Œuvre', 'café', 'Café au lait', 'ĲSSEL', 'İstanbul'],
  ...[
    'tail lamp',
    'TAIL-LAMP',
    '5 A',
    '%',
    '_',
    '"',
    "l'eau",
    'a"b',
    'ﬁn',
    '座席',
    'wet',
    'w',
    'été',
    '| edge',
  ],
];

const draw = <T>(list: readonly T[], chance: Chance): T => list[Math.floor(chance() * list.length)] as T;
const phrase = (chance: Chance): string =>
  Array.from({ length: 1 + Math.floor(chance() * 4) }, () => draw(parts, chance)).join(' ');

function shop(seed: number, jobs: number) {
  const chance = seededChance(seed);
  const { connection } = openFreshStore();
  const mapIds = Array.from({ length: 4 }, (_, i) => `map:m${i}` as const);
  const record = wholeJob();
  record.add('close', { outcome: 'proved', reason: '', advice: '' });
  for (const id of mapIds) addMap(connection, { ...worked, id, details: named(phrase(chance)) }, now);
  for (let i = 0; i < jobs; i++) {
    const mapId = draw(mapIds, chance);
    const note = { id: `entry:n${i}`, at: now, type: 'note', text: phrase(chance) } as const;
    const from = chance() < 0.5 ? record.job : sample.job;
    const job: Job = {
      ...from,
      id: `job:j${i}`,
      mapId,
      vehicle: { ...from.vehicle, plate: `${draw(parts, chance)} ${i}` },
      complaint: phrase(chance),
      entries: [note, ...from.entries],
    };
    expect(addJob(connection, jobSchema.parse(job), { ...worked, id: mapId }).ok).toBe(true);
  }
  return { connection, chance, mapIds };
}

const named = (name: string) => ({ ...worked.details, name: name.slice(0, 120) });
const plain = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{Diacritic}/gu, '')
    .toLowerCase();

/** Every job with all that is written on it, in the order of the list. */
function readThrough(connection: Connection) {
  return listJobs(connection).map(({ id, mapId, mapName }) => {
    const job = readJob(connection, id);
    if (!job) throw new Error(`no ${id}`);
    const circuit = worked.circuits.find((each) => each.id === job.circuitId)?.name ?? '';
    const notes = standingEntries(job).flatMap((entry: JobEntry) =>
      entry.type === 'note' ? entry.text : 'note' in entry ? entry.note : [],
    );
    const text = plain([job.vehicle.plate, job.complaint, circuit, ...notes, mapName].join(' '));
    const codes: unknown[] = jobFacts(job).found.flatMap(({ cause, damage }) => [cause, damage]);
    return { id, mapId, text, codes };
  });
}

/** Jobs that hold every word, looked for one by one without any index. */
const holding = (
  jobs: ReturnType<typeof readThrough>,
  words: readonly SearchWord[],
  mapId: MapId | null = null,
): string[] =>
  jobs
    .filter((job) => mapId === null || job.mapId === mapId)
    .filter(({ text, codes }) =>
      words.every(
        (word) => text.includes(plain(word.text)) || word.codes.some((code) => codes.includes(code)),
      ),
    )
    .map(({ id }) => id);

const found = (connection: Connection, words: readonly SearchWord[], mapId: MapId | null = null): string[] =>
  searchJobs(connection, words, mapId, 1_000).jobs.map(({ id }) => id);

/** A piece of what was written, in any case, with or without its accents; sometimes a code, or nothing at all. */
function wordFrom(chance: Chance): SearchWord {
  const letters = [...draw(parts, chance)];
  const from = Math.floor(chance() * letters.length);
  const piece = letters.slice(from, from + 1 + Math.floor(chance() * 5)).join('');
  const text = chance() < 0.3 ? piece.toUpperCase() : chance() < 0.5 ? plain(piece) : piece;
  return {
    text: text || '´',
    codes: chance() < 0.2 ? [draw(['chafed', 'edge-touches', 'edge'], chance)] : [],
  };
}

test('the index finds just what looking through every job finds, in the same order', () => {
  const { connection, chance, mapIds } = shop(8, 40);
  const jobs = readThrough(connection);
  let some = 0;
  for (let i = 0; i < 150; i++) {
    const words = Array.from({ length: Math.floor(chance() * 4) }, () => wordFrom(chance));
    const mapId = chance() < 0.3 ? draw(mapIds, chance) : null;
    const wanted = holding(jobs, words, mapId);
    expect(found(connection, words, mapId), JSON.stringify(words)).toEqual(wanted);
    if (wanted.length > 0 && wanted.length < 40) some++;
  }
  expect(some).toBeGreaterThan(50);
});

test('what a job is found by follows its notes, its intake and the name of its map', () => {
  const { connection } = shop(3, 5);
  const word = (text: string): SearchWord[] => [{ text, codes: [] }];
  const [line] = listJobs(connection);
  const job = line && readJob(connection, line.id);
  if (!job) throw new Error('no job');
  expect(found(connection, word('wasp'))).toEqual([]);
  const note = { id: 'entry:w', at: now, type: 'note', text: 'Wasp nest' } as const;
  const open = listJobs(connection).find(({ stage }) => stage !== 'closed');
  const noted = open && readJob(connection, open.id);
  if (!noted) throw new Error('no open job');
  expect(appendEntries(connection, noted.id, noted.entries.length, [note], now).ok).toBe(true);
  expect(found(connection, word('wasp'))).toEqual([noted.id]);
  expect(changeIntake(connection, job.id, { ...job, complaint: 'Zebra' }, now).ok).toBe(true);
  expect(found(connection, word('zebra'))).toEqual([job.id]);
  const map = readMap(connection, job.mapId);
  if (!map) throw new Error('no map');
  const renamed = patchOf({ changed: [[map.details, named('Quokka')]] });
  const edit = {
    label: 'edit',
    origin: 'user',
    patch: renamed,
    selectionBefore: [],
    selectionAfter: [],
  } as const;
  expect(commitTransaction(connection, map.id, map.revision, edit, now).ok).toBe(true);
  expect(found(connection, word('quokka'))).toEqual(holding(readThrough(connection), word('quokka')));
  expect(found(connection, word('quokka'))).toContain(job.id);
  expect(removeMap(connection, map.id).ok).toBe(true);
  expect(found(connection, word('quokka'))).toEqual([]);
  expect(found(connection, [])).toHaveLength(5);
});

test('the index is made a few jobs at a time, and the first search makes what is left', () => {
  const { connection } = shop(5, 12);
  expect(indexChangedJobs(connection, 5)).toBe(7);
  expect(found(connection, [])).toHaveLength(12);
  expect(indexChangedJobs(connection, 5)).toBe(0);
  expect(searchJobs(connection, [], null, 3)).toMatchObject({ total: 12, jobs: { length: 3 } });
  expect(connection.pragma('integrity_check', { simple: true })).toBe('ok');
});
