import { type Job, jobFormat, jobSchema, jobVersion } from '#core/job/job-document.ts';
import { type MapExchange, mapExchangeSchema, mapFormat, mapVersion } from '#core/map/exchange.ts';
import { fieldProblem } from '#core/map/field-problem.ts';
import { fail, ok, type Result } from '#core/quantity/result.ts';

/** What one file may hold. */
export type BroughtDocument =
  | { readonly kind: 'map'; readonly map: MapExchange }
  | { readonly kind: 'job'; readonly job: Job };

/** Reads a file's text as the map or job it says it is. Gives the first problem otherwise. */
export function readDocument(text: string): Result<BroughtDocument> {
  let raw: unknown;
  try {
    raw = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return fail({ code: 'not-json', detail: error instanceof Error ? error.message : '' });
  }
  const { format, version } = (typeof raw === 'object' && raw !== null ? raw : {}) as Record<string, unknown>;
  if (format !== mapFormat && format !== jobFormat) {
    const found = typeof format === 'string' ? format.slice(0, 80) : typeof format;
    return fail({ code: 'wrong-format', expected: `${mapFormat}, ${jobFormat}`, found });
  }
  const known = format === mapFormat ? mapVersion : jobVersion;
  if (typeof version === 'number' && version > known) {
    return fail({ code: 'newer-version', found: version, known });
  }
  if (format === mapFormat) {
    const map = mapExchangeSchema.safeParse(raw);
    return map.success ? ok({ kind: 'map', map: map.data }) : fail(fieldProblem(map.error));
  }
  const job = jobSchema.safeParse(raw);
  return job.success ? ok({ kind: 'job', job: job.data }) : fail(fieldProblem(job.error));
}
