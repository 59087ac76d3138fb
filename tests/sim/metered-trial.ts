import { circuitComponents } from '#core/job/circuit-components.ts';
import { digLooks } from '#core/job/dig-looks.ts';
import { pathStretches } from '#core/job/path-stretches.ts';
import { rankOnLine } from '#core/job/rank-on-line.ts';
import { cumulate } from '#core/locate/cumulative.ts';
import type { BodyStyle, FaultClass } from '#core/map/kinds.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { type Calibration, calibration } from './calibration.ts';
import { clearedEnds, plainStart, type SearchStart } from './cleared-ends.ts';
import { type DrawnCar, drawnCar } from './drawn-car.ts';
import { type FaultyWire, faultyWire } from './faulty-wire.ts';
import { type MeteredOutcome, meteredSearch, orderedSearch, type SearchOutcome } from './metered-search.ts';
import { withReachableEnds } from './reachable-ends.ts';
import { searchByProportion } from './read-by-proportion.ts';
import { ruleKeys, type SimpleRule, simpleRules } from './rule-keys.ts';
import { searchedJob } from './searched-job.ts';
import { simpleOrder } from './simple-orders.ts';

/** How the two ends of the searched circuit lie, where most leads go. */
export const endsLie = ['under the trim', 'behind covers', 'cleared before'] as const;
export type EndsLie = (typeof endsLie)[number];

/** One car with one fault, searched with the tool and a meter, with the tool alone, and by every simple rule. */
export interface MeteredTrial {
  readonly shape: BodyStyle;
  readonly kind: FaultClass;
  readonly tool: Omit<MeteredOutcome, 'before'>;
  readonly toolWithoutMeter: Omit<MeteredOutcome, 'before'>;
  /** Each rule with both habits: looking at all that is in view by then, or only at the place chosen. */
  readonly rules: Readonly<Record<SimpleRule, readonly [all: SearchOutcome, chosen: SearchOutcome]>>;
  /** The same meter without the tool, with both habits. */
  readonly byProportion: readonly [all: SearchOutcome, chosen: SearchOutcome];
  /** Straight to the true place with the same eyes: nobody can be quicker. */
  readonly atOnce: SearchOutcome;
  /** Of what was believed when the tests were done and the first place was about to be looked at. */
  readonly calibration: Calibration;
}

/** More looks at the true place than anybody needs. */
const mostNotices = 60;

/**
 * Draws a car, its fault and its meter, and searches it in every way with the same eyes: the first look at
 * the true place notices the fault or not, whoever looks, and so the second. All know what the parted plug
 * showed; simple rules are without a meter beyond that.
 */
export function meteredTrial(seed: number, shape: BodyStyle, ends: EndsLie): MeteredTrial {
  const drawn = drawnCar(seed, shape);
  const car = ends === 'under the trim' ? drawn : withReachableEnds(drawn, seededChance(seed + 2_000_000));
  const chance = seededChance(seed + 1_000_000);
  const notices = Array.from({ length: mostNotices }, () => chance() < car.lookQuality);
  const wire = faultyWire(car, chance);
  const start = ends === 'cleared before' ? clearedEnds(car, wire) : plainStart(car);
  const { before, ...tool } = meteredSearch(car, wire, notices, start, { withMeter: true });
  const { before: _, ...toolWithoutMeter } = meteredSearch(car, wire, notices, start, { withMeter: false });
  const edges = before.posterior.cellEdgesMm;
  const trueCell = Math.max(0, edges.findIndex((edge) => edge > wire.trueMm) - 1);
  const truth = new Float64Array(edges.length - 1);
  truth[trueCell] = 1;
  return {
    shape,
    kind: car.kind,
    tool,
    toolWithoutMeter,
    ...searchedWithoutTool(car, wire, start, notices),
    calibration: calibration(edges, before.posterior.cellProbability, truth),
  };
}

function searchedWithoutTool(
  car: DrawnCar,
  wire: FaultyWire,
  start: SearchStart,
  notices: readonly boolean[],
): Pick<MeteredTrial, 'rules' | 'byProportion' | 'atOnce'> {
  const { map, line, field } = car;
  const { trueMm } = wire;
  const { posterior } = rankOnLine(map, line, field, searchedJob(car, start.entries));
  const parts = circuitComponents(map, line).map(({ part }) => part);
  const curve = cumulate(posterior.cellEdgesMm, posterior.cellProbability);
  const looks = digLooks(map, pathStretches(line), posterior, curve, parts).filter(
    ({ nodeId }) => nodeId === null,
  );
  const keys = ruleKeys(car);
  const searched = (rule: SimpleRule, looksAtAll: boolean): SearchOutcome =>
    orderedSearch(simpleOrder(looks, map.panels, keys[rule], looksAtAll), trueMm, notices);
  const rules = Object.fromEntries(
    simpleRules.map((rule) => [rule, [searched(rule, true), searched(rule, false)]]),
  ) as unknown as MeteredTrial['rules'];
  const byProportion = (looksAtAll: boolean): SearchOutcome =>
    searchByProportion(car, wire, looks, start.off, notices, looksAtAll);
  const there = looks.filter(({ fromMm, toMm }) => fromMm <= trueMm && trueMm < toMm);
  return {
    rules,
    byProportion: [byProportion(true), byProportion(false)],
    atOnce: orderedSearch(
      simpleOrder(there, map.panels, () => 0, true),
      trueMm,
      notices,
    ),
  };
}
