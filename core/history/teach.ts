import type { ChafeAssumptions } from '../chafe/chafe-assumptions.ts';
import type { MapDocument } from '../map/map-document.ts';
import { type PastJob, type PastSum, type Tally, tallyJobs } from './past-jobs.ts';
import { finerFactor, taughtFactor } from './taught-factor.ts';

/** What past jobs taught about one map, as factors on the model; 1 is as modelled. */
export interface History
  extends Pick<ChafeAssumptions, 'causeFactor' | 'rubSpotKindFactor' | 'rubSpotFactor' | 'rubSpotFinds'> {
  /** Jobs it rests on: on every map, and on this one. */
  readonly jobs: number;
  readonly jobsOnMap: number;
  /** Finds on every map and on this one, shared out. */
  readonly found: Tally;
  readonly foundOnMap: Tally;
}

/**
 * Learns from past jobs for one map. A kind of cause or spot is learnt from every map (kind level), drawn
 * towards that from this map's own jobs (model level), and each spot is drawn towards both (spot level): at
 * each level the factor is (a + n) / (a + E), E being the finds the levels above expected. O(jobs).
 * @example
 * teach([], sample.map).causeFactor // => {}
 */
export function teach(jobs: readonly PastJob[], map: MapDocument): History {
  const own = jobs.filter((job) => job.mapId === map.id);
  const all = { jobs: jobs.length, ...tallyJobs(jobs) };
  return teachSums({ all, onMap: { jobs: own.length, ...tallyJobs(own) } }, map);
}

/** Past jobs summed up, so that no job need be read: every map's, this one's included, and this one's. */
export interface PastSums {
  readonly all: PastSum;
  readonly onMap: PastSum;
}

/**
 * The same from sums kept elsewhere. O(kinds + spots).
 * @example
 * teachSums({ all: { jobs: 0, found: emptyTally, expected: emptyTally }, onMap: { jobs: 0, found: emptyTally, expected: emptyTally } }, sample.map).jobs // => 0
 */
export function teachSums({ all, onMap }: PastSums, map: MapDocument): History {
  const causeFactor = levelFactors('causes', all, onMap);
  const rubSpotKindFactor = levelFactors('rubSpotKinds', all, onMap);
  const rubSpotFactor = new Map<string, number>();
  const rubSpotFinds = new Map<string, number>();
  for (const spot of map.rubSpots.values()) {
    const finds = onMap.found.rubSpots[spot.id] ?? 0;
    const expected = onMap.expected.rubSpots[spot.id] ?? 0;
    if (finds === 0 && expected === 0) continue;
    rubSpotFactor.set(spot.id, finerFactor({ finds, expected }, rubSpotKindFactor[spot.kind] ?? 1));
    if (Math.round(finds) > 0) rubSpotFinds.set(spot.id, Math.round(finds));
  }
  return {
    causeFactor,
    rubSpotKindFactor,
    rubSpotFactor,
    rubSpotFinds,
    jobs: all.jobs,
    jobsOnMap: onMap.jobs,
    found: all.found,
    foundOnMap: onMap.found,
  };
}

interface Told {
  readonly found: Tally;
  readonly expected: Tally;
}

function levelFactors<L extends 'causes' | 'rubSpotKinds'>(level: L, all: Told, onMap: Told): Tally[L] {
  const factors: Record<string, number> = {};
  const amount = (tally: Tally, key: string) => (tally[level] as Record<string, number>)[key] ?? 0;
  for (const key of new Set([...Object.keys(all.found[level]), ...Object.keys(all.expected[level])])) {
    const ofKind = taughtFactor({ finds: amount(all.found, key), expected: amount(all.expected, key) });
    const ofMap = finerFactor(
      { finds: amount(onMap.found, key), expected: amount(onMap.expected, key) },
      ofKind,
    );
    factors[key] = ofKind * ofMap;
  }
  return factors as Tally[L];
}

/**
 * The chafe model with what past jobs taught; the model as it is when there is nothing or it is switched off.
 * @example
 * withHistory(defaultAssumptions, null) === defaultAssumptions // => true
 */
export function withHistory(assumptions: ChafeAssumptions, history: History | null): ChafeAssumptions {
  if (!history) return assumptions;
  const { causeFactor, rubSpotKindFactor, rubSpotFactor, rubSpotFinds } = history;
  return { ...assumptions, causeFactor, rubSpotKindFactor, rubSpotFactor, rubSpotFinds };
}
