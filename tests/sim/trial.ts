import { hazardAlong } from '#core/chafe/hazard-along.ts';
import { layStraight } from '#core/circuit/circuit-line.ts';
import { planDig } from '#core/dig/plan-dig.ts';
import { circuitComponents } from '#core/job/circuit-components.ts';
import { digLooks, type PlacedLook } from '#core/job/dig-looks.ts';
import { failureTypeFactors } from '#core/job/failure-type-factors.ts';
import type { FailureType } from '#core/job/job-document.ts';
import { pathStretches } from '#core/job/path-stretches.ts';
import { summarisePosterior } from '#core/job/summarise-posterior.ts';
import { cumulate, probabilityWithin } from '#core/locate/cumulative.ts';
import { layHypotheses } from '#core/locate/hypotheses.ts';
import { logPrior, type PriorShape } from '#core/locate/prior.ts';
import { unplugEvidence } from '#core/locate/unplug-evidence.ts';
import { weighEvidence } from '#core/locate/weigh-evidence.ts';
import type { BodyStyle, FaultClass } from '#core/map/kinds.ts';
import { seededChance } from '#core/quantity/chance.ts';
import { pulledAt } from '#tests/core/locate/small-line.ts';
import { drawFrom } from '#tests/generated/draw.ts';
import { type Calibration, calibration } from './calibration.ts';
import { randomVehicle } from './random-vehicle.ts';
import { planSteps, type SearchScore, searchScore } from './search-score.ts';
import { type NextPlace, simpleOrder } from './simple-orders.ts';
import { trueFault } from './true-fault.ts';

/** The simple rules a technician may go by. */
export const simpleRules = [
  'from the module outwards',
  'from the plug just tested',
  'cheapest panel first',
  'likeliest first, trim ignored',
] as const;
export type SimpleRule = (typeof simpleRules)[number];

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

/** How often each class of fault comes, and the failure type that goes with it (judgement, no source). */
const classes: readonly (readonly [FaultClass, number, FailureType])[] = [
  ['short-to-ground', 0.5, 'circuit-short-to-ground'],
  ['open', 0.28, 'circuit-open'],
  ['high-resistance', 0.16, 'circuit-resistance-above-threshold'],
  ['short-to-supply', 0.06, 'circuit-short-to-battery'],
];

/** Classes whose symptom goes when the wire beyond a plug is cut off. */
const shorts: readonly FaultClass[] = ['short-to-ground', 'short-to-supply'];

/** Reports that say nothing; and plug tests whose outcome is misread (judgement). */
const vagueShare = 0.15;
const misreadShare = 0.03;

/** States for the plan that counts as proved best; the plan given has the usual limit. */
const thoroughStates = 20_000;

/**
 * One invented car, searched by the tool and by the simple rules. Where a short is searched and a plug
 * can be reached without trim, it is parted and the symptom watched before anyone opens anything; all
 * searches know its outcome.
 */
export function trial(seed: number, shape: BodyStyle, priorShape?: PriorShape): Trial {
  const draw = drawFrom(seededChance(seed));
  const { map, circuit } = randomVehicle(draw, shape);
  const laid = layStraight(map, circuit);
  if (!laid.ok) throw new Error(laid.problem.code);
  const line = laid.value;
  const field = hazardAlong(map, line);
  const [kind, , failureType] = pickClass(draw.chance());
  let truth = trueFault(draw, line, field, kind);
  const edges = field.cellEdgesMm;
  const plug = line.nodes.find(
    ({ nodeId }) =>
      map.nodes.get(nodeId)?.kind === 'inline-connector' && map.nodes.get(nodeId)?.panelIds.length === 0,
  );
  let stays: boolean | null = null;
  if (plug && shorts.includes(kind)) {
    const before = probabilityWithin(cumulate(edges, truth), { fromMm: 0, toMm: plug.stationMm });
    stays = draw.happens(before * (1 - misreadShare) + (1 - before) * misreadShare);
    truth = afterPlugTest(truth, edges, plug.stationMm, stays);
  }
  const components = circuitComponents(map, line);
  const parts = components.map(({ part }) => part);
  const hypotheses = layHypotheses(edges, parts);
  const prior = logPrior(
    hypotheses,
    field,
    components.map(({ weight }) => weight),
    failureTypeFactors(draw.happens(vagueShare) ? 'not-known' : failureType, circuit),
    priorShape,
  );
  const evidence = plug && stays !== null ? [unplugEvidence(pulledAt(plug.stationMm, stays))] : [];
  const stretches = pathStretches(line);
  const posterior = summarisePosterior(hypotheses, weighEvidence(hypotheses, prior, evidence), stretches);
  const curve = cumulate(posterior.cellEdgesMm, posterior.cellProbability);
  const looks = digLooks(map, stretches, posterior, curve, parts);
  const none = new Set<never>();
  const given = planDig(looks, map.panels, none);
  const best = given.proved ? given : planDig(looks, map.panels, none, { stateLimit: thoroughStates });

  const quality = draw.between(0.75, 0.97);
  const trueCurve = cumulate(edges, truth);
  const chanceAt = (look: PlacedLook): number => (look.nodeId ? 0 : probabilityWithin(trueCurve, look));
  const wireLooks = looks.filter(({ nodeId }) => nodeId === null);
  const plan = searchScore(withAll(planSteps(given.openings, map.panels), wireLooks), chanceAt, quality);
  const knowing = planDig(
    wireLooks.map((look) => ({ ...look, probability: chanceAt(look), quality, once: false })),
    map.panels,
    none,
  );
  const startMm = plug?.stationMm ?? line.lengthMm / 2;
  const keys: Readonly<Record<SimpleRule, (place: NextPlace<PlacedLook>) => number>> = {
    'from the module outwards': ({ look }) => look.fromMm,
    'from the plug just tested': ({ look }) => {
      const middle = (look.fromMm + look.toMm) / 2;
      const wrongSide = stays !== null && (stays ? middle > startMm : middle < startMm);
      return Math.abs(middle - startMm) + (wrongSide ? line.lengthMm : 0);
    },
    'cheapest panel first': ({ trimMinutes }) => trimMinutes,
    'likeliest first, trim ignored': ({ look }) => -look.probability,
  };
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

function pickClass(chance: number): (typeof classes)[number] {
  let left = chance;
  for (const each of classes) {
    left -= each[1];
    if (left < 0) return each;
  }
  return classes[0] as (typeof classes)[number];
}

function afterPlugTest(
  truth: Float64Array<ArrayBuffer>,
  edges: Float64Array,
  stationMm: number,
  stays: boolean,
): Float64Array<ArrayBuffer> {
  const told = truth.map((p, i) => {
    const isBefore = ((edges[i] as number) + (edges[i + 1] as number)) / 2 < stationMm;
    return p * (isBefore === stays ? 1 - misreadShare : misreadShare);
  });
  const sum = told.reduce((a, b) => a + b, 0);
  return told.map((p) => p / sum);
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
