import { expect, test } from 'vitest';
import type { Job } from '#core/job/job-document.ts';
import { mapToExchange } from '#core/map/exchange.ts';
import { addJob, appendEntries } from '#db/job-store.ts';
import { addMap } from '#db/map-store.ts';
import { handlersOver } from '#electron/handlers/index.ts';
import { wholeJob } from '#tests/core/job/closing-record.ts';
import { openFreshStore } from '#tests/db/open-fresh-store.ts';
import { sample } from '#tests/sample.ts';
import { keeperOver } from './keeper-over.ts';

const now = (): string => '2026-01-05T15:00:00.000Z';

function shop() {
  const { connection, file } = openFreshStore();
  const map = mapToExchange(sample.map);
  addMap(connection, map, now());
  const record = wholeJob();
  const close = record.add('close', { outcome: 'proved', reason: '', advice: '' });
  const closed: Job = { ...record.job, id: 'job:closed' };
  const open: Job = {
    ...sample.job,
    id: 'job:open',
    vehicle: { ...sample.job.vehicle, plate: 'STOCK 2' },
    complaint: 'Tail lamp out, Café owner',
  };
  for (const job of [closed, open]) expect(addJob(connection, job, map).ok).toBe(true);
  const handlers = handlersOver({
    connection,
    now,
    chance: () => 0.5,
    backups: keeperOver(connection, file),
  });
  const search = (...words: { text: string; codes: string[] }[]) => {
    const found = handlers['jobs.search']({ words });
    if (!found.ok) throw new Error(found.problem.code);
    return found.value.jobs.map(({ id }) => id);
  };
  return { connection, handlers, search, closed, close };
}

const word = (text: string, ...codes: string[]) => ({ text, codes });

test('past jobs are found by plate, complaint, model and circuit, without accents or case', () => {
  const { search } = shop();
  expect(search(word('stock 2'))).toEqual(['job:open']);
  expect(search(word('CAFE'))).toEqual(['job:open']);
  expect(search(word('reads pressed'))).toEqual(['job:closed']);
  expect(search(word('tiny'))).toHaveLength(2);
  expect(search(word('seat switch'))).toHaveLength(2);
  expect(search()).toHaveLength(2);
  expect(search(word('stock'), word('no such word'))).toEqual([]);
});

test('past jobs are found by cause and damage through the codes of a word', () => {
  const { search } = shop();
  expect(search(word('edge', 'edge-touches'))).toEqual(['job:closed']);
  expect(search(word('rubbed', 'chafed'))).toEqual(['job:closed']);
  expect(search(word('burned', 'heat-burned'))).toEqual([]);
});

test('what a job is searched by follows its record', () => {
  const { connection, search } = shop();
  expect(search(word('wasp'))).toEqual([]);
  const note = { id: 'entry:n', at: now(), type: 'note', text: 'Wasp nest in the pillar' } as const;
  expect(appendEntries(connection, 'job:open', 0, [note], now()).ok).toBe(true);
  expect(search(word('wasp'))).toEqual(['job:open']);
});

test('the shop’s figures and where a model chafes come from its own jobs', () => {
  const { handlers } = shop();
  expect(handlers['shop.figures']({})).toMatchObject({
    ok: true,
    value: {
      overall: { jobs: 2, closed: 1, found: 1, meanMinutesToFind: 40, firstOpeningShare: 1 },
      models: [{ mapId: 'map:tiny', mapName: 'Tiny sample', jobs: 2 }],
    },
  });
  expect(handlers['map.past']({ mapId: 'map:tiny' })).toMatchObject({
    ok: true,
    value: { places: [{ segmentId: 'segment:middle', causes: 1, damageCauses: ['edge-touches'] }] },
  });
});

test('an open job is told what closed jobs teach about its map, and not by itself', () => {
  const { connection, handlers, closed, close } = shop();
  const taught = handlers['jobs.taught']({ jobId: 'job:open' });
  expect(taught).toMatchObject({
    ok: true,
    value: { waiting: 0, sums: { all: { jobs: 1 }, onMap: { jobs: 1 } } },
  });
  expect(handlers['jobs.taught']({ jobId: 'job:closed' })).toMatchObject({
    value: { sums: { all: { jobs: 0 } } },
  });
  const undo = { id: 'entry:t', at: now(), type: 'take-back', entryId: close.id } as const;
  expect(appendEntries(connection, 'job:closed', closed.entries.length, [undo], now()).ok).toBe(true);
  expect(handlers['jobs.taught']({ jobId: 'job:open' })).toMatchObject({
    value: { sums: { all: { jobs: 0 } } },
  });
  expect(handlers['jobs.taught']({ jobId: 'job:gone' })).toMatchObject({ problem: { code: 'not-found' } });
});

test('a closed job takes nothing more until its end is taken back', () => {
  const { connection, handlers, closed, close } = shop();
  const count = closed.entries.length;
  const note = { id: 'entry:n', at: now(), type: 'note', text: 'Late thought' } as const;
  const refused = { ok: false, problem: { code: 'job-closed', job: 'job:closed' } };
  expect(appendEntries(connection, 'job:closed', count, [note], now())).toEqual(refused);
  const undo = { id: 'entry:t', at: now(), type: 'take-back', entryId: close.id } as const;
  expect(appendEntries(connection, 'job:closed', count, [undo, note], now())).toMatchObject({ ok: true });
  const listed = handlers['library.list']({});
  expect(listed.ok && listed.value.jobs.find(({ id }) => id === 'job:closed')?.stage).toBe('repaired');
});

test('a repair of a find that is not there is refused', () => {
  const { connection } = shop();
  const entry = {
    id: 'entry:r',
    at: now(),
    type: 'looked-along',
    findingId: 'entry:gone',
    eachWayMm: 300,
    beside: 'sound',
    twin: 'sound',
    note: '',
  } as const;
  expect(appendEntries(connection, 'job:open', 0, [entry], now())).toMatchObject({
    problem: { code: 'job-reference', field: 'findingId', missing: 'entry:gone' },
  });
});

test('printing to a file is left to the desktop window', () => {
  const { handlers } = shop();
  expect(handlers['page.print']({ fileName: 'report.pdf', paper: 'a4' })).toMatchObject({
    problem: { code: 'unknown-request' },
  });
});
