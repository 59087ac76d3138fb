import { planDig } from '#core/dig/plan-dig.ts';
import { circuitComponents } from '#core/job/circuit-components.ts';
import { digLooks, type PlacedLook } from '#core/job/dig-looks.ts';
import { failureTypeFactors } from '#core/job/failure-type-factors.ts';
import { pathStretches } from '#core/job/path-stretches.ts';
import { summarisePosterior } from '#core/job/summarise-posterior.ts';
import { cumulate, probabilityWithin } from '#core/locate/cumulative.ts';
import { layHypotheses } from '#core/locate/hypotheses.ts';
import { logPrior, type PriorShape } from '#core/locate/prior.ts';
import { unplugEvidence } from '#core/locate/unplug-evidence.ts';
import { weighEvidence } from '#core/locate/weigh-evidence.ts';
import type { BodyStyle } from '#core/map/kinds.ts';
import { pulledAt } from '#tests/core/locate/small-line.ts';
import { type Calibration, calibration } from './calibration.ts';
import { drawnCar } from './drawn-car.ts';
import { ruleKeys, type SimpleRule, simpleRules } from './rule-keys.ts';
import { planSteps, type SearchScore, searchScore } from './search-score.ts';
import { simpleOrder } from './simple-orders.ts';

/** What one invented car and its fault showed. */
export interface Trial {
  readonly shape: BodyStyle;
  readonly panels: number;
  readonly runs: number;
  readonly circuitMm: number;
  readonly plan: SearchScore;
  /** Each rule with both habits: looking at all that is in view by then, or only at the place chosen. */
  readonly rules: Readonly<Record<SimpleRule, readonly [all: SearchScore, chosen: SearchScore]>>;
  /** The best plan for someone who knew this car's own true chances. */
  readonly knowing: SearchScore;
  /** Mean minutes by the tool's own chances: the plan given, one made without search, the proved best or null. */
  readonly own: { readonly given: number; readonly quick: number; readonly best: number | null };
  readonly calibration: Calibration;
}

/** States for the plan that counts as proved best; the plan given has the usual limit. */
const thoroughStates = 20_000;

/**
 * One invented car, searched by the tool without any meter and by the simple rules, as means over where
 * its fault may be.
 */
export function trial(seed: number, shape: BodyStyle, priorShape?: PriorShape): Trial {
  const car = drawnCar(seed, shape);
  const { map, circuit, line, field, truth, plugTest, lookQuality: quality } = car;
  const edges = field.cellEdgesMm;
  const components = circuitComponents(map, line);
  const parts = components.map(({ part }) => part);
  const hypotheses = layHypotheses(edges, parts);
  const prior = logPrior(
    hypotheses,
    field,
    components.map(({ weight }) => weight),
    failureTypeFactors(car.failureType, circuit),
    priorShape,
  );
  const evidence = plugTest ? [unplugEvidence(pulledAt(plugTest.stationMm, plugTest.stays))] : [];
  const stretches = pathStretches(line);
  const posterior = summarisePosterior(hypotheses, weighEvidence(hypotheses, prior, evidence), stretches);
  const curve = cumulate(posterior.cellEdgesMm, posterior.cellProbability);
  const looks = digLooks(map, stretches, posterior, curve, parts);
  const none = new Set<never>();
  const given = planDig(looks, map.panels, none);
  const best = given.proved ? given : planDig(looks, map.panels, none, { stateLimit: thoroughStates });

  const trueCurve = cumulate(edges, truth);
  const chanceAt = (look: PlacedLook): number => (look.nodeId ? 0 : probabilityWithin(trueCurve, look));
  const wireLooks = looks.filter(({ nodeId }) => nodeId === null);
  const plan = searchScore(withAll(planSteps(given.openings, map.panels), wireLooks), chanceAt, quality);
  const knowing = planDig(
    wireLooks.map((look) => ({ ...look, probability: chanceAt(look), quality, once: false })),
    map.panels,
    none,
  );
  const keys = ruleKeys(car);
  const rules = Object.fromEntries(
    simpleRules.map((rule) => {
      const habits = [true, false].map((looksAtAll) =>
        searchScore(simpleOrder(wireLooks, map.panels, keys[rule], looksAtAll), chanceAt, quality),
      );
      return [rule, habits];
    }),
  ) as unknown as Trial['rules'];
  return {
    shape,
    panels: map.panels.size,
    runs: map.segments.size,
    circuitMm: line.lengthMm,
    plan,
    rules,
    knowing: searchScore(planSteps(knowing.openings, map.panels), (look) => chanceAt(look), quality),
    own: {
      given: given.expectedMinutes,
      quick: planDig(looks, map.panels, none, { stateLimit: 0 }).expectedMinutes,
      best: best.proved ? best.expectedMinutes : null,
    },
    calibration: calibration(edges, posterior.cellProbability, truth),
  };
}

/** A plan leaves out places of next to no chance; a search that finds nothing goes to them in the end. */
function withAll<L extends PlacedLook>(
  steps: ReturnType<typeof planSteps<L>>,
  looks: readonly L[],
): ReturnType<typeof planSteps<L>> {
  const planned = new Set(steps.map(({ look }) => look));
  const late = looks.filter((look) => !planned.has(look));
  return [...steps, ...late.map((look) => ({ look, minutes: look.minutes + 30, opening: steps.length }))];
}
