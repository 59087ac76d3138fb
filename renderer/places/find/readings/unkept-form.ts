import type { CircuitId, JobId } from '#core/quantity/id.ts';
import type { ReadingForm } from './reading-form.ts';

/** Forms that were begun and closed again, by job and circuit, for as long as the app is open. */
const unkeptForms = new Map<string, ReadingForm>();

/** The begun form of a job: closing the form loses nothing that was typed. */
export function unkeptForm(jobId: JobId, circuitId: CircuitId) {
  const key = `${jobId} ${circuitId}`;
  return {
    read: (): ReadingForm | null => unkeptForms.get(key) ?? null,
    keep: (form: ReadingForm): void => void unkeptForms.set(key, form),
    drop: (): void => void unkeptForms.delete(key),
  };
}
