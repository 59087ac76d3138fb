import { joinRanges } from '../locate/station-ranges.ts';
import { compareText } from '../quantity/compare-text.ts';
import type { NodeId, SegmentId } from '../quantity/id.ts';
import type { DamageCause, DamageType } from './closing-words.ts';
import type { FoundPlaceFact, FoundPlaceKind, JobFacts } from './job-facts.ts';
import type { Stretch } from './reading.ts';

/** A stretch of a model's loom, or a part on it, where something was found, over all of its past jobs. */
export interface ChafingPlace {
  /** The plug or other part it was in, which sits on the stretch. Null: in the wire. */
  readonly partNodeId: NodeId | null;
  readonly segmentId: SegmentId;
  readonly fromMm: number;
  readonly toMm: number;
  /** Jobs in which it was the proved cause, was taken for it without proof, and in which damage there was not it. */
  readonly causes: number;
  readonly notProved: number;
  readonly otherDamage: number;
  /** Jobs in which it was opened and seen sound. */
  readonly sound: number;
  readonly damageCauses: readonly DamageCause[];
  readonly damageTypes: readonly DamageType[];
}

/** Finds nearer to each other than this are one place: a hand covers it. Judgement. */
const sameHandMm = 100;

/**
 * Where a model chafes: finds of its jobs on the same run that lie within 100 mm of each other are one
 * place; what was in a plug or another part is a place of its own. Most causes first, then most
 * other finds, then by run and place. Stations in mm of the run.
 * @example
 * chafingPlaces([jobFacts(sample.job)]) // => []
 */
export function chafingPlaces(facts: readonly JobFacts[]): readonly ChafingPlace[] {
  const bySegment = new Map<SegmentId, { fromMm: number; toMm: number }[]>();
  const parts = new Map<NodeId, Place>();
  for (const { stretches, partNodeId } of facts.flatMap(({ found }) => found)) {
    if (partNodeId) {
      const [at] = stretches;
      if (at && !parts.has(partNodeId)) parts.set(partNodeId, { ...at, partNodeId });
      continue;
    }
    for (const { segmentId, fromMm, toMm } of stretches) {
      bySegment.set(segmentId, [...(bySegment.get(segmentId) ?? []), { fromMm, toMm }]);
    }
  }
  const places = [...bySegment].flatMap(([segmentId, ranges]) =>
    joinRanges(
      ranges.map(({ fromMm, toMm }) => ({ fromMm: fromMm - sameHandMm / 2, toMm: toMm + sameHandMm / 2 })),
    )
      .map(({ fromMm, toMm }) => ({
        partNodeId: null,
        segmentId,
        fromMm: fromMm + sameHandMm / 2,
        toMm: toMm - sameHandMm / 2,
      }))
      .map((place) => countedPlace(place, facts)),
  );
  const found = [...places, ...[...parts.values()].map((place) => countedPlace(place, facts))];
  return found.sort(
    (a, b) =>
      b.causes - a.causes ||
      b.notProved + b.otherDamage - a.notProved - a.otherDamage ||
      compareText(a.segmentId, b.segmentId) ||
      a.fromMm - b.fromMm ||
      compareText(a.partNodeId ?? '', b.partNodeId ?? ''),
  );
}

type Place = Pick<ChafingPlace, 'partNodeId' | 'segmentId' | 'fromMm' | 'toMm'>;

function countedPlace(place: Place, facts: readonly JobFacts[]): ChafingPlace {
  const covers = (stretches: readonly Stretch[]): boolean =>
    stretches.some(
      ({ segmentId, fromMm, toMm }) =>
        segmentId === place.segmentId && fromMm <= place.toMm && toMm >= place.fromMm,
    );
  const jobs = (isHere: (each: JobFacts) => boolean): number => facts.filter(isHere).length;
  const isIn = ({ stretches, partNodeId }: FoundPlaceFact): boolean =>
    (partNodeId ?? null) === place.partNodeId && (place.partNodeId !== null || covers(stretches));
  const withFind = (kind: FoundPlaceKind): number =>
    jobs(({ found }) => found.some((each) => each.is === kind && isIn(each)));
  const here = facts.flatMap(({ found }) => found.filter(isIn));
  return {
    ...place,
    causes: withFind('proved-cause'),
    notProved: withFind('not-proved'),
    otherDamage: withFind('other-damage'),
    sound: jobs(({ soundStretches }) => covers(soundStretches)),
    damageCauses: [...new Set(here.flatMap(({ cause }) => cause ?? []))].sort(compareText),
    damageTypes: [...new Set(here.flatMap(({ damage }) => damage ?? []))].sort(compareText),
  };
}
