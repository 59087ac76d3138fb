import type { CircuitLine } from '../circuit/circuit-line.ts';
import { isLookOnly } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { EntryId, PanelId } from '../quantity/id.ts';
import type { CloseOutcome } from './closing-words.ts';
import type { EntryOf, JobEntry } from './job-document.ts';
import { sinceSearch } from './job-stage.ts';
import { panelsToRefit } from './panels-to-refit.ts';
import { type ProofItem, proofChecklist } from './proof-checklist.ts';
import { missingProof, type ProofOfCausePart } from './proved-find.ts';
import { shownAfterRepair } from './shown-after-repair.ts';

/** What keeps a job open. */
export type CloseHindrance =
  | { readonly code: 'no-cause-found' }
  | { readonly code: 'not-proved'; readonly missing: readonly ProofOfCausePart[] }
  | { readonly code: 'not-repaired'; readonly findingId: EntryId; readonly isCause: boolean }
  | { readonly code: 'still-rubs'; readonly findingId: EntryId }
  | { readonly code: 'not-looked-along'; readonly findingId: EntryId }
  | { readonly code: 'test-missing'; readonly item: ProofItem }
  | { readonly code: 'test-bad'; readonly item: ProofItem }
  | { readonly code: 'shown-after-repair'; readonly entryIds: readonly EntryId[] }
  | { readonly code: 'panels-off'; readonly panelIds: readonly PanelId[] }
  | { readonly code: 'no-reason' };

/** What stands in the way of an end, and what is only worth a second thought. */
export interface CloseCheck {
  readonly hindrances: readonly CloseHindrance[];
  readonly reminders: readonly CloseHindrance[];
}

/**
 * What is still missing before a job may be closed in one of its three ways; it may when there are no
 * hindrances. Closing as proved asks for the find, its three-part proof, its repair, what stops it rubbing
 * now, a look along the loom, every test good and every panel on. The other two ask for a reason, and remind
 * of panels and of damage left as it is.
 * @example
 * canClose(sample.map, sample.line, sample.job.entries, 'not-found', '').hindrances // => [{ code: 'no-reason' }]
 */
export function canClose(
  map: MapDocument,
  line: CircuitLine | null,
  entries: readonly JobEntry[],
  outcome: CloseOutcome,
  reason: string,
): CloseCheck {
  const panelIds = panelsToRefit(map, entries).map(({ id }) => id);
  const off: CloseHindrance[] = panelIds.length > 0 ? [{ code: 'panels-off', panelIds }] : [];
  const findings = entries.filter((entry) => entry.type === 'finding');
  const damaged = findings.filter(({ result }) => result === 'damaged-not-cause');
  const leftDamaged = unrepaired(entries, damaged).map(
    ({ id }): CloseHindrance => ({ code: 'not-repaired', findingId: id, isCause: false }),
  );
  if (outcome !== 'proved') {
    const hindrances: CloseHindrance[] = reason.trim() === '' ? [{ code: 'no-reason' }] : [];
    return { hindrances, reminders: [...off, ...leftDamaged] };
  }
  const cause = sinceSearch(entries, 'finding').findLast(({ result }) => result === 'proved-cause');
  if (!cause || !line) return { hindrances: [{ code: 'no-cause-found' }, ...off], reminders: leftDamaged };
  const lookOnly = isLookOnly(line.circuit.duty);
  const hindrances = [
    ...causeHindrances(entries, cause, lookOnly),
    ...testHindrances(map, line, entries),
    ...shownHindrances(map, line, entries),
    ...off,
  ];
  return { hindrances, reminders: leftDamaged };
}

function causeHindrances(
  entries: readonly JobEntry[],
  cause: EntryOf<'finding'>,
  lookOnly: boolean,
): readonly CloseHindrance[] {
  const hindrances: CloseHindrance[] = [];
  const findingId = cause.id;
  const missing = missingProof(entries, findingId, lookOnly);
  if (missing.length > 0) hindrances.push({ code: 'not-proved', missing });
  const repairs = entries.filter((entry) => entry.type === 'repair' && entry.findingId === findingId);
  if (repairs.length === 0) hindrances.push({ code: 'not-repaired', findingId, isCause: true });
  // A plug or joint that failed did not rub on anything.
  else if (!cause.partNodeId && !repairs.some((entry) => entry.type === 'repair' && entry.cures.length > 0)) {
    hindrances.push({ code: 'still-rubs', findingId });
  }
  if (!entries.some((entry) => entry.type === 'looked-along' && entry.findingId === findingId)) {
    hindrances.push({ code: 'not-looked-along', findingId });
  }
  return hindrances;
}

function testHindrances(
  map: MapDocument,
  line: CircuitLine,
  entries: readonly JobEntry[],
): readonly CloseHindrance[] {
  return proofChecklist(map, line, entries).flatMap((item): CloseHindrance[] => {
    if (!item.done) return [{ code: 'test-missing', item }];
    return item.done.good ? [] : [{ code: 'test-bad', item }];
  });
}

function shownHindrances(
  map: MapDocument,
  line: CircuitLine,
  entries: readonly JobEntry[],
): readonly CloseHindrance[] {
  const entryIds = shownAfterRepair(map, line, entries).map(({ id }) => id);
  return entryIds.length > 0 ? [{ code: 'shown-after-repair', entryIds }] : [];
}

function unrepaired(
  entries: readonly JobEntry[],
  findings: readonly EntryOf<'finding'>[],
): readonly EntryOf<'finding'>[] {
  const repaired = new Set(entries.flatMap((entry) => (entry.type === 'repair' ? [entry.findingId] : [])));
  return findings.filter(({ id }) => !repaired.has(id));
}
