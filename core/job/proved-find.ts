import type { EntryId } from '../quantity/id.ts';
import type { EntryOf, JobEntry } from './job-document.ts';

/** The three parts of a proof that this damage is the fault. */
export const proofOfCauseParts = ['damageSeen', 'onFaultyCircuit', 'comesAndGoes'] as const;
export type ProofOfCausePart = (typeof proofOfCauseParts)[number];

/** How far a find that was taken for the cause is proved; `refused`: asked, and not all parts hold. */
export const findProofs = ['proved', 'not-given', 'refused'] as const;
export type FindProof = (typeof findProofs)[number];

/**
 * The parts of a find's proof that do not hold or were not asked yet; none once it is proved. Restraint and
 * high-voltage wiring (`lookOnly`) is never moved to see whether a fault comes and goes.
 * @example
 * missingProof([], 'entry:f', true) // => ['damageSeen', 'onFaultyCircuit']
 */
export function missingProof(
  entries: readonly JobEntry[],
  findingId: EntryId,
  lookOnly: boolean,
): readonly ProofOfCausePart[] {
  const proof = proofOf(entries, findingId);
  const asked = proofOfCauseParts.filter((part) => !(lookOnly && part === 'comesAndGoes'));
  return asked.filter((part) => !proof?.[part]);
}

/**
 * How far one find is proved, from the standing entries alone. A job closed as proved shows that the third part
 * was not asked for, so there the first two are enough.
 * @example
 * findProof([], 'entry:f') // => 'not-given'
 */
export function findProof(entries: readonly JobEntry[], findingId: EntryId, lookOnly = false): FindProof {
  const proof = proofOf(entries, findingId);
  if (!proof) return 'not-given';
  const inTwo = lookOnly || proof.comesAndGoes === null || endedAsProved(entries);
  return missingProof(entries, findingId, inTwo).length === 0 ? 'proved' : 'refused';
}

/**
 * The finds that were proved to be the cause, in the order of the entries.
 * @example
 * provedFinds(sample.job.entries) // => []
 */
export function provedFinds(entries: readonly JobEntry[], lookOnly = false): readonly EntryOf<'finding'>[] {
  return entries.filter(
    (entry): entry is EntryOf<'finding'> =>
      entry.type === 'finding' &&
      entry.result === 'proved-cause' &&
      findProof(entries, entry.id, lookOnly) === 'proved',
  );
}

const endedAsProved = (entries: readonly JobEntry[]): boolean =>
  entries.findLast((entry) => entry.type === 'close')?.outcome === 'proved';

function proofOf(entries: readonly JobEntry[], findingId: EntryId): EntryOf<'proof-of-cause'> | null {
  return (
    entries.findLast(
      (entry): entry is EntryOf<'proof-of-cause'> =>
        entry.type === 'proof-of-cause' && entry.findingId === findingId,
    ) ?? null
  );
}
