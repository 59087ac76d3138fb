import type { Job } from '#core/job/job-document.ts';
import { minutesWorked } from '#core/job/job-facts.ts';
import { type JobStage, jobStage } from '#core/job/job-stage.ts';
import { provedFinds } from '#core/job/proved-find.ts';
import { standingEntries } from '#core/job/standing-entries.ts';

/** How far a job has come, for its line in the list. */
export interface JobProgress {
  readonly stage: JobStage;
  readonly minutesSpent: number;
  readonly findCount: number;
}

/** Stage, time (in minutes, from entry to entry) and proved causes of a job from its record. */
export function jobProgress(job: Job): JobProgress {
  const entries = standingEntries(job);
  return {
    stage: jobStage(entries),
    minutesSpent: minutesWorked(job.openedAt, job.entries),
    findCount: provedFinds(entries).length,
  };
}
