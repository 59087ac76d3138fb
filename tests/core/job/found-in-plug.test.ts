import { expect, test } from 'vitest';
import { canClose } from '#core/job/can-close.ts';
import { chafingPlaces } from '#core/job/chafing-places.ts';
import { jobSchema } from '#core/job/job-document.ts';
import { jobFacts } from '#core/job/job-facts.ts';
import { jobFaults } from '#core/job/job-faults.ts';
import { pastJob } from '#core/job/past-job.ts';
import { proposedRubSpots } from '#core/job/proposed-rub-spots.ts';
import { repairWarnings } from '#core/job/repair-warnings.ts';
import { sample } from '#tests/sample.ts';
import { ClosingRecord, causeFinding, wholeJob } from './closing-record.ts';
import { provedAt } from './proved-at.ts';

const part = { partNodeId: 'node:middle' } as const;
const beside = [{ segmentId: 'segment:front', fromMm: 485, toMm: 500 }] as const;

/** The whole job, its cause in the middle plug instead of the wire. */
function inPlug(): ClosingRecord {
  const record = new ClosingRecord();
  record.entries.push(
    ...wholeJob().entries.map((entry) =>
      entry.type === 'inspection' || entry.type === 'finding'
        ? { ...entry, ...part, stretches: [...beside] }
        : entry,
    ),
  );
  return record;
}

test('a cause in a plug is kept as the plug, in a valid document that fits its map', () => {
  const { job } = inPlug();
  expect(jobSchema.safeParse(job).error).toBeUndefined();
  expect(jobFaults(sample.map, job)).toEqual([]);
  expect(jobFacts(job).found).toMatchObject([{ ...part, is: 'proved-cause' }]);
  const gone = { ...job, entries: [{ ...causeFinding, ...part, partNodeId: 'node:gone' as const }] };
  const [entry] = gone.entries;
  const record = new ClosingRecord();
  if (entry) record.add('finding', entry);
  expect(jobFaults(sample.map, record.job)).toMatchObject([{ field: 'partNodeId', missing: 'node:gone' }]);
});

test('on the model’s page the plug is a place of its own, not the wire beside it', () => {
  const wire = new ClosingRecord();
  wire.entries.push(...provedAt(beside));
  const places = chafingPlaces([jobFacts(inPlug().job), jobFacts(inPlug().job), jobFacts(wire.job)]);
  expect(places.map(({ partNodeId, causes }) => [partNodeId, causes])).toEqual([
    ['node:middle', 2],
    [null, 1],
  ]);
});

test('it teaches nothing of where looms rub, and no rub spot is proposed for it', () => {
  const record = inPlug();
  record.add('close', { outcome: 'proved', reason: '', advice: '' });
  expect(pastJob(sample.map, record.job)).toBeNull();
  expect(proposedRubSpots(sample.map, record.job)).toEqual([]);
});

test('renewing a terminal is no repair that leaves an edge bare', () => {
  const renewed = { practices: ['terminal-renewed'], joints: 0, cures: [], makerAllows: 'yes' } as const;
  const codes = (isPart: boolean) =>
    repairWarnings(
      sample.map,
      beside,
      'ordinary',
      { ...renewed, practices: [...renewed.practices], cures: [] },
      isPart,
    ).map(({ code }) => code);
  expect(codes(false)).toContain('cause-not-removed');
  expect(codes(true)).not.toContain('cause-not-removed');
});

test('to close the job nothing need be said of what stops it rubbing', () => {
  const record = new ClosingRecord();
  record.entries.push(
    ...inPlug().entries.map((entry) => (entry.type === 'repair' ? { ...entry, cures: [] } : entry)),
  );
  const codes = canClose(sample.map, sample.line, record.entries, 'proved', '').hindrances;
  expect(codes.map(({ code }) => code)).not.toContain('still-rubs');
});
