import { expect, test } from 'vitest';
import type { JobSummary } from '#electron/contract/contract.ts';
import { newestFirst } from '#renderer/places/start/use-library.ts';

const job = (id: JobSummary['id'], openedAt: string): JobSummary => ({
  id,
  mapId: 'map:pivet',
  mapName: 'Pivet',
  plate: '',
  complaint: '',
  openedAt,
  changedAt: openedAt,
  stage: 'testing',
  minutesSpent: 0,
});

test('the job opened last stands first, and jobs opened together never change places', () => {
  const jobs = [
    job('job:b', '2026-01-05T09:00:00Z'),
    job('job:c', '2026-01-06T09:00:00Z'),
    job('job:a', '2026-01-05T09:00:00Z'),
  ];
  expect(jobs.sort(newestFirst).map(({ id }) => id)).toEqual(['job:c', 'job:a', 'job:b']);
});
