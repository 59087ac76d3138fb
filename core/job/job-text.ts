import { documentText } from '../map/document-text.ts';
import { type Job, jobSchema } from './job-document.ts';

/**
 * The text of a job's file in its normal form: one entry a line, fields in the order of the schema, so
 * that the same job always gives the same text, to the byte.
 * @example
 * jobText({ ...sample.job, entries: [] }).split('\n')[1] // => '  "format": "undertrim.job",'
 */
export function jobText(job: Job): string {
  const checked = jobSchema.safeParse(job);
  return documentText(checked.success ? checked.data : job);
}
