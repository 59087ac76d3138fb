import type { Job } from '#core/job/job-document.ts';
import { jobFormat } from '#core/job/job-document.ts';
import { readJob } from '#core/job/read-job.ts';
import { type MapExchange, mapFormat, mapToExchange } from '#core/map/exchange.ts';
import { readMap } from '#core/map/read-map.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';

/** What one file may hold. */
export type BroughtDocument =
  | { readonly kind: 'map'; readonly map: MapExchange }
  | { readonly kind: 'job'; readonly job: Job };

/**
 * Reads a file's text as the map or job it says it is. Gives the first problem otherwise; a map that
 * hangs together badly is refused here, though a half-drawn one is not.
 */
export function readDocument(text: string): Result<BroughtDocument> {
  const map = readMap(text);
  if (map.ok) {
    const first = map.value.problems[0];
    return first ? fail(first) : ok({ kind: 'map', map: mapToExchange(map.value.map) });
  }
  if (map.problem.code !== 'wrong-format') return map;
  if (map.problem.found !== jobFormat) {
    return fail({ ...map.problem, expected: `${mapFormat}, ${jobFormat}` });
  }
  const job = readJob(text);
  return job.ok ? ok({ kind: 'job', job: job.value }) : job;
}
