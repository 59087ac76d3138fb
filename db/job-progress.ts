import type { Job } from '#core/job/job-document.ts';
import { standingEntries } from '#core/job/standing-entries.ts';

/** How far a job has come, for its line in the list. */
export interface JobProgress {
  readonly stage: 'testing' | 'opening' | 'found';
  readonly minutesSpent: number;
  readonly findCount: number;
}

/** A longer silence than this between two entries is a break, not work. Common practice, no source. */
const longestPauseMinutes = 60;

/**
 * Stage, time and finds of a job from its standing entries: testing until a panel comes off or a
 * stretch is looked at, opening until the fault is found. Time runs from the opening of the job from
 * entry to entry; pauses of more than an hour are left out. In minutes.
 */
export function jobProgress(job: Job): JobProgress {
  const entries = standingEntries(job);
  const finds = entries.filter((entry) => entry.type === 'inspection' && entry.result === 'found').length;
  const opened = entries.some((entry) => entry.type === 'panel-off' || entry.type === 'inspection');
  const unfound = opened ? 'opening' : 'testing';
  return { stage: finds > 0 ? 'found' : unfound, minutesSpent: minutesSpent(job), findCount: finds };
}

function minutesSpent(job: Job): number {
  const times = [job.openedAt, ...job.entries.map((entry) => entry.at)].map((at) => Date.parse(at));
  times.sort((a, b) => a - b);
  let minutes = 0;
  for (let i = 1; i < times.length; i++) {
    const gap = ((times[i] as number) - (times[i - 1] as number)) / 60_000;
    if (gap <= longestPauseMinutes) minutes += gap;
  }
  return Math.round(minutes);
}
