import type { Caution } from '../map/kinds.ts';
import type { TestCaution } from './closing-entries.ts';
import type { JobEntry } from './job-document.ts';

/** What was read and understood in a job: cautions of panels, and what can hurt in a test. */
export interface CautionsRead {
  readonly panels: ReadonlySet<Caution>;
  readonly tests: ReadonlySet<TestCaution>;
}

/**
 * The cautions that were read and understood; each once in a job, whatever step asked for it. O(entries).
 * @example
 * cautionsRead([{ id: 'entry:a', at: '2026-01-05T10:00:00Z', type: 'caution-read', cautions: ['airbag'] }]).panels.has('airbag') // => true
 */
export function cautionsRead(standing: readonly JobEntry[]): CautionsRead {
  const read = standing.flatMap((entry) => (entry.type === 'caution-read' ? [entry] : []));
  return {
    panels: new Set(read.flatMap(({ cautions }) => cautions)),
    tests: new Set(read.flatMap(({ tests }) => tests ?? [])),
  };
}
