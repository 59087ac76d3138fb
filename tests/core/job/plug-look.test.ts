import { expect, test } from 'vitest';
import type { Job, JobEntry } from '#core/job/job-document.ts';
import { jobFaults } from '#core/job/job-faults.ts';
import { rank } from '#core/job/rank.ts';
import type { NodeId } from '#core/quantity/id.ts';
import { sample } from '#tests/sample.ts';

const look = (nodeIds?: NodeId[]): JobEntry => ({
  id: 'entry:look',
  at: '2026-01-05T10:00:00Z',
  type: 'inspection',
  stretches: [{ segmentId: 'segment:front', fromMm: 485, toMm: 500 }],
  ...(nodeIds ? { nodeIds } : {}),
  result: 'seen-sound',
  lookQuality: 0.95,
  note: '',
});
const jobWith = (entry: JobEntry): Job => ({ ...sample.job, entries: [entry] });
const plugChance = (job: Job): number => {
  const ranked = rank(sample.map, job);
  if (!ranked.ok) throw new Error('the tiny sample can be ranked');
  const plug = ranked.value.posterior.components.find(({ nodeId }) => nodeId === 'node:middle');
  return plug?.probability ?? Number.NaN;
};

test('a plug that was parted and looked into becomes less likely; looking past it from outside does not do that', () => {
  const before = plugChance(sample.job);
  expect(before).toBeGreaterThan(0);
  expect(plugChance(jobWith(look(['node:middle'])))).toBeLessThan(before * 0.2);
  expect(plugChance(jobWith(look()))).toBeGreaterThanOrEqual(before);
});

test('a look into a plug the map does not have is named as the job’s fault', () => {
  expect(jobFaults(sample.map, jobWith(look(['node:none'])))).toEqual([
    { code: 'job-reference', entry: 'entry:look', field: 'nodeIds', missing: 'node:none' },
  ]);
});
