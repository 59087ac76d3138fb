import type { JobId } from '#core/quantity/id.ts';

/** What of the close is in sight: the work, or one of its printed sheets. */
export const closePages = ['work', 'report', 'bench-sheet'] as const;
export type ClosePage = (typeof closePages)[number];

/** Address of the close and of its sheets. */
export const closeHash = (jobId: JobId, page: ClosePage = 'work'): string =>
  page === 'work' ? `#/close/${jobId}` : `#/close/${jobId}/${page}`;
