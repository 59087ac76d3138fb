import { checkedDocument } from '../map/checked-document.ts';
import { parseJson } from '../map/parse-json.ts';
import { fail, type Result } from '../quantity/result.ts';
import { type Job, jobFormat, jobSchema, jobVersion } from './job-document.ts';

/**
 * Reads a job document from its JSON text. Refuses what is not JSON (`not-json`), another kind of
 * document (`wrong-format`), one from a newer release (`newer-version`) and a wrong field (`bad-field`,
 * with the path of the first). Whether it fits its map is for `jobFaults`.
 * @example
 * readJob('{"format":"undertrim.job","version":9}').problem // => { code: 'newer-version', found: 9, known: 1 }
 */
export function readJob(text: string): Result<Job> {
  const parsed = parseJson(text);
  if (!parsed.ok) return parsed;
  const data = parsed.value;
  const head: { format?: unknown; version?: unknown } =
    typeof data === 'object' && data !== null && !Array.isArray(data) ? data : {};
  if (head.format !== jobFormat) {
    const found = typeof head.format === 'string' ? head.format.slice(0, 80) : '';
    return fail({ code: 'wrong-format', expected: jobFormat, found });
  }
  if (typeof head.version === 'number' && head.version > jobVersion) {
    return fail({ code: 'newer-version', found: head.version, known: jobVersion });
  }
  return checkedDocument(jobSchema, head);
}
