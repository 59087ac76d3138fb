import { minutesBetween } from '../quantity/minutes-between.ts';
import { type ClockKind, clockKinds } from './closing-words.ts';
import type { JobEntry } from './job-document.ts';

/** Minutes on each clock of the bill, and which one runs. */
export interface JobClock {
  readonly minutes: Readonly<Record<ClockKind, number>>;
  readonly totalMinutes: number;
  readonly running: { readonly clock: ClockKind; readonly since: string } | null;
}

/**
 * The clocks as they stand at `now` (ISO 8601), from the entries alone, so that they survive a restart. One
 * runs at a time: a start ends the one before, closing the job ends them all, and a clock never counts below
 * nothing. In minutes. O(entries).
 * @example
 * jobClock([{ id: 'entry:a', at: '2026-01-05T09:00:00Z', type: 'time', clock: 'find', action: 'start' }], '2026-01-05T09:30:00Z').minutes.find // => 30
 */
export function jobClock(entries: readonly JobEntry[], now: string): JobClock {
  const minutes: Record<ClockKind, number> = { find: 0, reach: 0, repair: 0, refit: 0 };
  let running: JobClock['running'] = null;
  const stopAt = (at: string): void => {
    if (running) minutes[running.clock] += Math.max(0, minutesBetween(running.since, at));
    running = null;
  };
  for (const entry of entries) {
    if (entry.type === 'close') stopAt(entry.at);
    if (entry.type !== 'time') continue;
    if (entry.action === 'adjust') {
      minutes[entry.clock] += entry.minutes ?? 0;
      continue;
    }
    if (entry.action === 'start') {
      stopAt(entry.at);
      running = { clock: entry.clock, since: entry.at };
    } else if ((running as JobClock['running'])?.clock === entry.clock) stopAt(entry.at);
  }
  const stillRunning = running as JobClock['running'];
  if (stillRunning) minutes[stillRunning.clock] += Math.max(0, minutesBetween(stillRunning.since, now));
  for (const clock of clockKinds) minutes[clock] = Math.max(0, minutes[clock]);
  const totalMinutes = clockKinds.reduce((sum, clock) => sum + minutes[clock], 0);
  return { minutes, totalMinutes, running: stillRunning };
}
