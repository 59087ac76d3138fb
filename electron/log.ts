import { appendFileSync, mkdirSync, renameSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Where hosts note their own troubles. */
export interface Log {
  /** Notes that something threw: what was being done, the error's kind and where, none of its data. */
  trouble(doing: string, error: unknown): void;
}

const largestBytes = 500_000;

/**
 * A log in a file of the data folder, with one older file beside it. It holds times, request names, error
 * kinds and places in the program; never a message, for a message may quote a customer's words. A log
 * that cannot be written stays silent: it must not stop the work.
 */
export function openLog(folder: string, now: () => string): Log {
  const file = join(folder, 'undertrim.log');
  return {
    trouble(doing, error) {
      try {
        mkdirSync(folder, { recursive: true });
        if ((statSync(file, { throwIfNoEntry: false })?.size ?? 0) > largestBytes) {
          renameSync(file, join(folder, 'undertrim.older.log'));
        }
        appendFileSync(file, `${now()} ${doing} ${traceOf(error)}\n`);
      } catch {
        // Nothing better can be done with a trouble about noting a trouble.
      }
    },
  };
}

function traceOf(error: unknown): string {
  if (!(error instanceof Error)) return typeof error;
  const code = 'code' in error ? ` ${String(error.code)}` : '';
  // The message stands before the places and may have lines of its own.
  const stack = error.stack ?? '';
  const after = stack.includes(error.message) ? stack.indexOf(error.message) + error.message.length : 0;
  const places = stack
    .slice(after)
    .split('\n')
    .filter((line) => /^\s+at .+:\d+:\d+\)?$/.test(line));
  return [`${error.name}${code}`, ...places].join('\n');
}
