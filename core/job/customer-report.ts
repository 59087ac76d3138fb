import type { CircuitLine } from '../circuit/circuit-line.ts';
import { isLookOnly } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { CircuitId, EntryId, PanelId } from '../quantity/id.ts';
import { type JobClock, jobClock } from './job-clock.ts';
import type { EntryOf, Job, JobEntry } from './job-document.ts';
import { minutesWorked } from './job-facts.ts';
import { closingOf } from './job-stage.ts';
import { panelsRefitted, panelsToRefit } from './panels-to-refit.ts';
import { type ProofItem, proofChecklist } from './proof-checklist.ts';
import { type FindProof, findProof } from './proved-find.ts';
import { standingEntries } from './standing-entries.ts';

/** Everything about one find that belongs in a report. */
export interface ReportedFind {
  readonly finding: EntryOf<'finding'>;
  readonly proof: EntryOf<'proof-of-cause'> | null;
  readonly findProof: FindProof;
  readonly repairs: readonly EntryOf<'repair'>[];
  readonly lookedAlong: EntryOf<'looked-along'> | null;
}

/** What the customer is told, as facts; the language table and the print sheet make the page of it. */
export interface CustomerReport {
  readonly vehicle: Job['vehicle'];
  readonly openedAt: string;
  readonly closedAt: string | null;
  readonly complaint: string;
  readonly failureType: Job['failureType'];
  readonly circuitId: CircuitId | null;
  readonly agreed: readonly EntryOf<'agreed'>[];
  /** What was tested, in order. */
  readonly tests: readonly EntryOf<'reading'>[];
  /** The tests that had to come back good, before and after. */
  readonly proof: readonly ProofItem[];
  /** Looks that cleared a stretch. */
  readonly seenSound: readonly EntryOf<'inspection'>[];
  /** What was last taken for the cause; `findProof` says how far it is proved. */
  readonly cause: ReportedFind | null;
  /** Other damage, repaired or left; earlier causes of a stacked fault too. */
  readonly otherDamage: readonly ReportedFind[];
  readonly panelsRefitted: readonly PanelId[];
  readonly panelsStillOff: readonly PanelId[];
  readonly clock: JobClock;
  /** From entry to entry, where no clock ran. */
  readonly minutesWorked: number;
  readonly close: EntryOf<'close'> | null;
}

/**
 * The content of the customer's report at `now` (ISO 8601), from the standing record alone.
 * @example
 * customerReport(sample.map, sample.line, sample.job, '2026-01-05T10:00:00Z').cause // => null
 */
export function customerReport(
  map: MapDocument,
  line: CircuitLine | null,
  job: Job,
  now: string,
): CustomerReport {
  const entries = standingEntries(job);
  const lookOnly = isLookOnly(line?.circuit.duty);
  const finds = entries
    .filter((entry) => entry.type === 'finding')
    .map((finding) => reportedFind(entries, finding, lookOnly));
  const cause = finds.findLast(({ finding }) => finding.result === 'proved-cause') ?? null;
  const close = closingOf(entries);
  return {
    vehicle: job.vehicle,
    openedAt: job.openedAt,
    closedAt: close?.at ?? null,
    complaint: job.complaint,
    failureType: job.failureType,
    circuitId: job.circuitId,
    agreed: entries.filter((entry) => entry.type === 'agreed'),
    tests: entries.filter((entry) => entry.type === 'reading'),
    proof: line ? proofChecklist(map, line, entries) : [],
    seenSound: entries.filter(
      (entry): entry is EntryOf<'inspection'> => entry.type === 'inspection' && entry.result === 'seen-sound',
    ),
    cause,
    otherDamage: finds.filter((find) => find !== cause && find.finding.result !== 'sound'),
    panelsRefitted: panelsRefitted(map, entries).map(({ id }) => id),
    panelsStillOff: panelsToRefit(map, entries).map(({ id }) => id),
    clock: jobClock(entries, now),
    minutesWorked: minutesWorked(job.openedAt, job.entries),
    close,
  };
}

/**
 * One find with its proof, repairs and the look along the loom; `lookOnly` where the wiring may not be moved.
 * @example
 * reportedFind([], { id: 'entry:f', at: '2026-01-05T09:00:00Z', type: 'finding', stretches: [], damage: 'chafed', circuitId: null, cause: 'edge-touches', result: 'sound', photos: [], note: '' }).repairs // => []
 */
export function reportedFind(
  entries: readonly JobEntry[],
  finding: EntryOf<'finding'>,
  lookOnly = false,
): ReportedFind {
  const about = <T extends JobEntry & { readonly findingId: EntryId }>(
    isOne: (entry: JobEntry) => entry is T,
  ): T[] => entries.filter(isOne).filter(({ findingId }) => findingId === finding.id);
  return {
    finding,
    proof: about((entry) => entry.type === 'proof-of-cause').at(-1) ?? null,
    findProof: findProof(entries, finding.id, lookOnly),
    repairs: about((entry) => entry.type === 'repair'),
    lookedAlong: about((entry) => entry.type === 'looked-along').at(-1) ?? null,
  };
}
