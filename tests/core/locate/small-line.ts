import { type Evidence, type Hypotheses, layHypotheses, noneAt } from '#core/locate/hypotheses.ts';
import type { Unplugged } from '#core/locate/unplug-evidence.ts';
import { weighEvidence } from '#core/locate/weigh-evidence.ts';

/** A line of zones 1 m long each, no parts, whose prior on the wire is given; "none of these" has none. */
export function zones(count: number): Hypotheses {
  return layHypotheses(
    Float64Array.from({ length: count + 1 }, (_, i) => i * 1000),
    [],
  );
}

/** Zone by zone posterior of a prior that is the same for every class. */
export function zonePosterior(prior: readonly number[], evidence: readonly Evidence[]): number[] {
  const hypotheses = zones(prior.length);
  const log = new Float64Array(hypotheses.size).fill(Number.NEGATIVE_INFINITY);
  hypotheses.classes.forEach((_, k) => {
    prior.forEach((p, zone) => {
      log[k * prior.length + zone] = Math.log(p / hypotheses.classes.length);
    });
  });
  log[noneAt(hypotheses)] = Number.NEGATIVE_INFINITY;
  const probability = weighEvidence(hypotheses, log, evidence);
  return prior.map((_, zone) =>
    hypotheses.classes.reduce((sum, _each, k) => sum + (probability[k * prior.length + zone] as number), 0),
  );
}

/** The stretch of one zone, counted from 1. */
export const zone = (number: number) => ({ fromMm: (number - 1) * 1000, toMm: number * 1000 });

/** One plug or part pulled on a wire that ends at `endMm`, as evidence takes it. */
export function pulledAt(
  stationMm: number,
  stays: boolean,
  watchedFromSecondEnd = false,
  endMm = 1e6,
): Unplugged {
  return {
    watchedMm: [watchedFromSecondEnd ? { fromMm: stationMm, toMm: endMm } : { fromMm: 0, toMm: stationMm }],
    watcherMm: watchedFromSecondEnd ? endMm : 0,
    apartMm: [stationMm],
    stays,
  };
}
