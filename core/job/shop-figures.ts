import type { MapId } from '../quantity/id.ts';
import type { JobFacts } from './job-facts.ts';

/** How well finding goes, from a shop's own jobs. */
export interface ShopFigures {
  readonly jobs: number;
  readonly closed: number;
  /** Jobs in which a cause was proved. */
  readonly found: number;
  /** Null without a find. */
  readonly meanMinutesToFind: number | null;
  /** Share of the finds at the first place opened; null without a find. */
  readonly firstOpeningShare: number | null;
}

/**
 * The figures of some jobs.
 * @example
 * shopFigures([jobFacts(sample.job)]) // => { jobs: 1, closed: 0, found: 0, meanMinutesToFind: null, firstOpeningShare: null }
 */
export function shopFigures(facts: readonly JobFacts[]): ShopFigures {
  const finds = facts.filter(({ openings }) => openings !== null);
  const minutes = finds.flatMap(({ minutesToFind }) => minutesToFind ?? []);
  return {
    jobs: facts.length,
    closed: facts.filter(({ outcome }) => outcome !== null).length,
    found: finds.length,
    meanMinutesToFind:
      minutes.length === 0 ? null : minutes.reduce((sum, each) => sum + each, 0) / minutes.length,
    firstOpeningShare:
      finds.length === 0 ? null : finds.filter(({ openings }) => openings === 1).length / finds.length,
  };
}

/**
 * The figures of each model that has a job.
 * @example
 * [...figuresByModel([jobFacts(sample.job)]).keys()] // => ['map:tiny']
 */
export function figuresByModel(facts: readonly JobFacts[]): ReadonlyMap<MapId, ShopFigures> {
  const byModel = new Map<MapId, JobFacts[]>();
  for (const each of facts) byModel.set(each.mapId, [...(byModel.get(each.mapId) ?? []), each]);
  return new Map([...byModel].map(([mapId, own]) => [mapId, shopFigures(own)]));
}
