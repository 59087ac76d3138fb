import type { Job } from '#core/job/job-document.ts';
import { jobFaults } from '#core/job/job-faults.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { JobProblem } from '#core/quantity/problem.ts';

/** The first thing in a job its map does not have; null when it fits. No circuit chosen yet is no fault. */
export function jobMisfit(map: MapDocument, job: Job): JobProblem | null {
  return jobFaults(map, job).find(({ code }) => code !== 'job-circuit-unset') ?? null;
}
