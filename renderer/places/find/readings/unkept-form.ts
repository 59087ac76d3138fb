import type { CircuitId, JobId } from '#core/quantity/id.ts';
import { draftsOf } from '../../../session/drafts.ts';
import type { ReadingForm } from './reading-form.ts';

/** The begun form of a job: neither closing it nor a power cut loses what was typed. */
export function unkeptForm(jobId: JobId, circuitId: CircuitId) {
  const drafts = draftsOf(jobId);
  const name = `reading ${circuitId}`;
  return {
    read: (): ReadingForm | null =>
      (drafts.store.getState().forms[name]?.form as ReadingForm | undefined) ?? null,
    keep: (form: ReadingForm): void => drafts.change(name, { form }),
    drop: (): void => drafts.drop(name),
  };
}
