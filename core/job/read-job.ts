import { fieldProblem } from '../map/field-problem.ts';
import { fail, ok, type Result } from '../quantity/result.ts';
import { type Job, jobFormat, jobSchema, jobVersion } from './job-document.ts';

/**
 * Reads a job document from its JSON text. Refuses what is not JSON (`not-json`), another kind of
 * document (`wrong-format`), one from a newer release (`newer-version`) and a wrong field (`bad-field`,
 * with the path of the first). Whether it fits its map is for `jobFaults`.
 * @example
 * readJob('{"format":"undertrim.job","version":9}').problem // => { code: 'newer-version', found: 9, known: 1 }
 */
export function readJob(text: string): Result<Job> {
  let data: unknown;
  try {
    data = JSON.parse(text.replace(/^\uFEFF/, ''));
  } catch (error) {
    return fail({ code: 'not-json', detail: error instanceof Error ? error.message : String(error) });
  }
  const head: { format?: unknown; version?: unknown } =
    typeof data === 'object' && data !== null && !Array.isArray(data) ? data : {};
  if (head.format !== jobFormat) {
    const found = typeof head.format === 'string' ? head.format : '';
    return fail({ code: 'wrong-format', expected: jobFormat, found });
  }
  if (typeof head.version === 'number' && head.version > jobVersion) {
    return fail({ code: 'newer-version', found: head.version, known: jobVersion });
  }
  const read = jobSchema.safeParse(data);
  return read.success ? ok(read.data) : fail(fieldProblem(read.error));
}
