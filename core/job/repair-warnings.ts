import type { Caution, CircuitDuty } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Segment } from '../map/records.ts';
import { segmentLine } from '../map/segment-line.ts';
import { panelsOver } from '../map/segment-needs.ts';
import type { ClipId, NodeId } from '../quantity/id.ts';
import type { EntryOf } from './job-document.ts';
import type { Stretch } from './reading.ts';
import { fixingCures, repairPracticeTable } from './repair-practice-table.ts';

/** Practice that will not last or must not be, and care where it is done. Published accounts and common practice. */
export type RepairWarning =
  | { readonly code: 'join-in-flexing-part'; readonly trait: 'crosses-hinge' | 'slides-with-seat' }
  | { readonly code: 'joins-side-by-side'; readonly joints: number }
  | { readonly code: 'fixing-not-renewed'; readonly clipId: ClipId }
  | { readonly code: 'cause-not-removed' }
  | { readonly code: 'join-not-sealed' }
  | { readonly code: 'join-near-plug'; readonly nodeId: NodeId; readonly gapMm: number }
  | { readonly code: 'pair-untwisted' }
  | { readonly code: 'maker-must-allow'; readonly duty: CircuitDuty }
  | { readonly code: 'no-heat-near-fuel' }
  | { readonly code: 'shield-trim-from-heat' };

/** A join this near a plug or branch is pulled on. Common practice, no source. */
const plugClearanceMm = 50;
/** A missing fixing within this of the find let the loom move there. Judgement. */
const fixingReachMm = 300;

/** What the repair of a find is, before it is entered. */
export type PlannedRepair = Pick<EntryOf<'repair'>, 'practices' | 'joints' | 'cures' | 'makerAllows'>;

/**
 * What is wrong with a repair as entered, or to be careful of, at the place it was made. Nothing entered yet
 * gives only what the place itself asks for. Lengths in mm. O(stretches x (clips + tags)).
 * @example
 * repairWarnings(sample.map, [{ segmentId: 'segment:middle', fromMm: 240, toMm: 260 }], 'ordinary', { practices: ['crimp-and-sealed-sleeve'], joints: 1, cures: ['edge-trim'], makerAllows: 'yes' }) // => [{ code: 'shield-trim-from-heat' }]
 */
export function repairWarnings(
  map: MapDocument,
  stretches: readonly Stretch[],
  duty: CircuitDuty,
  repair: PlannedRepair,
  /** The damage is in a plug or another part, which did not rub. */
  inPart = false,
): readonly RepairWarning[] {
  const warnings: RepairWarning[] = [];
  const has = (practice: PlannedRepair['practices'][number]): boolean => repair.practices.includes(practice);
  const joins = repair.joints > 0 || repair.practices.some((each) => repairPracticeTable[each].joint);
  const places = stretches.flatMap((stretch) => {
    const segment = map.segments.get(stretch.segmentId);
    return segment ? [{ segment, stretch }] : [];
  });
  if (duty === 'restraint' && repair.makerAllows !== 'yes') warnings.push({ code: 'maker-must-allow', duty });
  if (duty === 'high-voltage') warnings.push({ code: 'maker-must-allow', duty });
  if (joins && !has('joints-moved-off-the-bend')) {
    const flexing = places.flatMap(({ segment }) => segment.traits).find(isFlexing);
    if (flexing) warnings.push({ code: 'join-in-flexing-part', trait: flexing });
  }
  if (repair.joints > 1 && !has('joints-staggered')) {
    warnings.push({ code: 'joins-side-by-side', joints: repair.joints });
  }
  if (has('crimp-and-tape') && !has('crimp-and-sealed-sleeve') && places.some(isWet)) {
    warnings.push({ code: 'join-not-sealed' });
  }
  if (joins && !has('joints-moved-off-the-bend')) {
    const near = places.map(({ segment, stretch }) => nearPlug(map, segment, stretch)).find((gap) => gap);
    if (near) warnings.push({ code: 'join-near-plug', ...near });
  }
  if (duty === 'data' && joins && !has('pair-kept-twisted')) warnings.push({ code: 'pair-untwisted' });
  if (!inPart && repair.practices.length > 0 && repair.cures.length === 0) {
    warnings.push({ code: 'cause-not-removed' });
  }
  if (repair.practices.length > 0 && !repair.cures.some((cure) => fixingCures.has(cure))) {
    const missing = places.flatMap(({ segment, stretch }) => missingFixing(segment, stretch))[0];
    if (missing) warnings.push({ code: 'fixing-not-renewed', clipId: missing });
  }
  if (repair.practices.some((each) => repairPracticeTable[each].hot)) {
    const cautions = new Set(places.flatMap(({ segment, stretch }) => cautionsAt(map, segment, stretch)));
    warnings.push({ code: cautions.has('fuel') ? 'no-heat-near-fuel' : 'shield-trim-from-heat' });
  }
  return warnings;
}

function isFlexing(trait: Segment['traits'][number]): trait is 'crosses-hinge' | 'slides-with-seat' {
  return trait === 'crosses-hinge' || trait === 'slides-with-seat';
}

const isWet = ({ segment }: { readonly segment: Segment }): boolean => segment.traits.includes('wet');

const middleOf = ({ fromMm, toMm }: Stretch): number => (fromMm + toMm) / 2;

/** The end of the run a join would sit too near to, and how near; null when there is room. */
function nearPlug(
  map: MapDocument,
  segment: Segment,
  stretch: Stretch,
): { readonly nodeId: NodeId; readonly gapMm: number } | null {
  const lengthMm = segmentLine(map, segment)?.lengthMm ?? 0;
  const gaps = [
    { nodeId: segment.fromNodeId, gapMm: middleOf(stretch) },
    { nodeId: segment.toNodeId, gapMm: lengthMm - middleOf(stretch) },
  ];
  return gaps.find(({ gapMm }) => gapMm < plugClearanceMm) ?? null;
}

function missingFixing(segment: Segment, { fromMm, toMm }: Stretch): readonly ClipId[] {
  return segment.clips
    .filter(
      ({ missing, stationMm }) =>
        missing && stationMm > fromMm - fixingReachMm && stationMm < toMm + fixingReachMm,
    )
    .map(({ id }) => id);
}

function cautionsAt(map: MapDocument, segment: Segment, stretch: Stretch): readonly Caution[] {
  return panelsOver(segment, middleOf(stretch)).flatMap((id) => map.panels.get(id)?.cautions ?? []);
}
