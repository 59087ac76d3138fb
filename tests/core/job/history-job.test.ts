import { expect, test } from 'vitest';
import { historyJob, jobOnMap } from '#core/job/history-job.ts';
import { type Job, jobSchema } from '#core/job/job-document.ts';
import { jobFacts } from '#core/job/job-facts.ts';
import { jobFaults } from '#core/job/job-faults.ts';
import { pastJob } from '#core/job/past-job.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { sample } from '#tests/sample.ts';
import { wholeJob } from './closing-record.ts';

/** Everything a customer could be known by, in every place where it can be typed. */
const secret = 'SECRET';

function closedJob(): Job {
  const record = wholeJob();
  record.add('note', { text: secret });
  record.add('agreed', { measure: 'minutes', adds: 60, extension: false, agreedBy: secret, note: secret });
  record.add('time', { clock: 'find', action: 'adjust', minutes: 35 });
  record.add('close', { outcome: 'proved', reason: secret, advice: secret });
  const photo = { sha256: 'a'.repeat(64), caption: secret };
  const entries = record.entries.map((entry) => ({
    ...entry,
    ...('note' in entry ? { note: secret } : {}),
    ...(entry.type === 'finding' || entry.type === 'repair' ? { photos: [photo] } : {}),
    ...(entry.type === 'reading' ? { meter: { name: secret } } : {}),
  })) as Job['entries'];
  return {
    ...sample.job,
    vehicle: { plate: secret, odometer: 123_456, odometerUnit: 'km' },
    complaint: secret,
    entries,
  };
}

test('a past job is handed on without anything the customer could be known by', () => {
  const past = historyJob(closedJob());
  expect(JSON.stringify(past)).not.toMatch(/SECRET|123456|aaaa/);
  expect(jobSchema.safeParse(past).error).toBeUndefined();
  expect(past && jobFaults(sample.map, past)).toEqual([]);
});

test('it still tells what was found, in how many minutes, and teaches the same', () => {
  const own = closedJob();
  const past = historyJob(own);
  if (!past) throw new Error('it is closed');
  expect(jobFacts(past)).toEqual({ ...jobFacts(own), handedOn: true });
  expect(pastJob(sample.map, past)).toEqual(pastJob(sample.map, own));
});

test('an open job is not handed on', () => {
  expect(historyJob(wholeJob().job)).toBeNull();
});

test('what belongs to a find that was taken back does not dangle', () => {
  const own = closedJob();
  const finding = own.entries.find(({ type }) => type === 'finding');
  const takeBack = {
    id: 'entry:back',
    at: '2026-01-05T20:00:00Z',
    type: 'take-back',
    entryId: finding?.id ?? 'entry:none',
  } as const;
  const past = historyJob({ ...own, entries: [...own.entries, takeBack] });
  expect(past && jobFaults(sample.map, past)).toEqual([]);
});

test('it goes to another drawing of the model only where its runs are as long there', () => {
  const past = historyJob(closedJob());
  if (!past) throw new Error('it is closed');
  const later: MapDocument = { ...sample.map, revision: 9 };
  expect(jobOnMap(past, sample.map, later)?.mapRevision).toBe(9);
  const far = sample.map.nodes.get('node:far');
  const middle = sample.map.nodes.get('node:middle');
  if (!far || !middle) throw new Error('the sample has them');
  const moved = { ...middle, at: { ...middle.at, xMm: middle.at.xMm + 200 } };
  const drawnAnew = { ...later, nodes: new Map(sample.map.nodes).set(middle.id, moved) };
  expect(jobOnMap(past, sample.map, drawnAnew)).toBeNull();
  expect(jobOnMap(past, sample.map, { ...later, segments: new Map() })).toBeNull();
});
