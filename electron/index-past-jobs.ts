import type { Connection } from '#db/connection.ts';
import { indexChangedJobs } from '#db/job-search-index.ts';
import type { Log } from './log.ts';

const jobsAtATime = 20;
const pauseMs = 100;

/** What putting past jobs into the index needs of the workshop. */
export interface IndexedStore {
  readonly log: Log;
  connection(): Connection;
  /** Whether the store is better left alone for now. */
  isBusy(): boolean;
}

/**
 * Puts jobs that are not in the search's index yet into it, a few at a time between other work, so that the
 * first search after an update does not wait for all of them. Gives what ends it early.
 */
export function indexPastJobs({ log, connection, isBusy }: IndexedStore): () => void {
  const timer = setInterval(() => {
    if (isBusy()) return;
    try {
      if (indexChangedJobs(connection(), jobsAtATime) === 0) clearInterval(timer);
    } catch (error) {
      // A search will meet the same, and tell it to whoever searches.
      log.trouble('index past jobs', error);
      clearInterval(timer);
    }
  }, pauseMs);
  timer.unref();
  return () => clearInterval(timer);
}
