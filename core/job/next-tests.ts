import { planDig } from '../dig/plan-dig.ts';
import { cumulate } from '../locate/cumulative.ts';
import { type ComponentHypothesis, componentAt, type Hypotheses } from '../locate/hypotheses.ts';
import { expectedBits } from '../locate/information.ts';
import { soundLook } from '../locate/look-evidence.ts';
import { offClosure, takeOffOrder } from '../map/panel-order.ts';
import type { PanelId } from '../quantity/id.ts';
import { digLooks, type PlacedLook } from './dig-looks.ts';
import type { NextTest, OutcomeLabel, TestOutcome } from './next-test.ts';
import { drawnStretches } from './path-stretches.ts';
import type { PossibleTest, TestGrounds } from './possible-test.ts';
import { possibleTests } from './possible-tests.ts';
import { partingMinutes, testMinutes } from './test-minutes-table.ts';

/** A test expected to tell less than this is not worth its leads, in bits (judgement). */
const leastBits = 0.03;

/** Tests worked through in minutes; those that tell least per minute are left aside (judgement). */
const mostWeighed = 8;

/** Of one kind no more are worked through: two plugs near one another tell much the same (judgement). */
const mostOfKind = 3;

/** Sets of work split up per plan: a near-best order is enough to compare tests by. */
const quickStates = 12;

/** Tests whether waiting for the first opening pays is asked of. */
const mostDelayed = 2;

/** Savings nearer than this are a tie; then the one that tells more comes first, in minutes. */
const tieMinutes = 0.05;

/** What is known now. */
export interface TestQuestion extends Omit<TestGrounds, 'cellProbability' | 'probability'> {
  /** Probability of every hypothesis on the (coarse) cells. */
  readonly probability: Float64Array;
  readonly parts: readonly ComponentHypothesis[];
  readonly off: ReadonlySet<PanelId>;
  readonly lookQuality?: number | undefined;
}

/**
 * Tests that are expected to save more minutes of opening up than they take, best first: for each, the
 * plan of opening up that would follow each way it may come out, weighed by how likely that is, against
 * the plan without it (one-step value of information; R. A. Howard 1966, from memory). Minutes include
 * reaching the places; what comes off for the test counts as off afterwards. A test that would pay more
 * after the first opening says so. O(tests x outcomes) plans of opening up.
 * @example
 * nextTests({ map: sample.map, line: { ...sample.line, circuit: { ...sample.circuit, duty: 'restraint' } }, cells: layHypotheses(new Float64Array([0, 1500]), []), probability: new Float64Array(6), stretches: [], entries: [], medianMm: 0, parts: [], off: new Set() }) // => []
 */
export function nextTests(question: TestQuestion): NextTest[] {
  const { cells, probability } = question;
  const cellProbability = wireCurve(cells, probability);
  const possible = possibleTests({ ...question, cellProbability });
  if (possible.length === 0) return [];
  const now = planAfter(question, probability, question.off);
  if (now.seen <= 0) return [];
  const tests = possible
    .map((test) => ({ test, bits: expectedBits(probability, test.chances) }))
    .filter(({ bits }) => bits >= leastBits)
    .sort((a, b) => b.bits / reachMinutes(question, b.test) - a.bits / reachMinutes(question, a.test))
    .filter(fewOfKind())
    .slice(0, mostWeighed)
    .map((each) => ({ ...each, worth: worthOf(question, each.test, probability, question.off) }))
    .map((each) => ({ ...each, saved: now.minutes - each.worth.minutes }))
    .filter(({ saved }) => saved > 0)
    .sort((a, b) => Math.round((b.saved - a.saved) / tieMinutes) || b.bits - a.bits);
  return tests.map(({ test, worth, saved, bits }, i) => ({
    kind: test.kind,
    nodeIds: test.nodeIds,
    sides: test.sides,
    towardsId: test.towardsId,
    other: test.other,
    ranges: test.ranges,
    stretches: drawnStretches(question.line, test.ranges),
    state: test.state,
    takeOff: worth.takeOff,
    outcomes: worth.outcomes,
    minutes: worth.testMinutes,
    minutesSaved: saved,
    bits,
    injection: test.injection,
    expected: test.expected,
    betterAfterOpening: i < mostDelayed && waitingPays(question, test, now, worth.minutes),
  }));
}

interface PlanAhead {
  /** Mean minutes until the fault is seen, and the chance that it is. */
  readonly minutes: number;
  readonly seen: number;
  readonly first: { readonly takeOff: readonly PanelId[]; readonly looks: readonly PlacedLook[] } | null;
  readonly firstMinutes: number;
  readonly firstSeen: number;
}

function wireCurve({ cellCount, classes }: Hypotheses, probability: Float64Array): Float64Array {
  const curve = new Float64Array(cellCount);
  for (let k = 0; k < classes.length; k++)
    for (let i = 0; i < cellCount; i++)
      curve[i] = (curve[i] as number) + (probability[k * cellCount + i] as number);
  return curve;
}

function planAfter(question: TestQuestion, probability: Float64Array, off: ReadonlySet<PanelId>): PlanAhead {
  const { map, cells, stretches, parts, lookQuality } = question;
  const curve = cumulate(cells.cellEdgesMm, wireCurve(cells, probability));
  const components = parts.map(({ nodeId }, i) => ({
    nodeId,
    probability: probability[componentAt(cells, i)] as number,
  }));
  const looks = digLooks(map, stretches, { components }, curve, parts, lookQuality);
  const order = planDig(looks, map.panels, off, { stateLimit: quickStates });
  const [first] = order.openings;
  return {
    minutes: order.expectedMinutes,
    seen: order.openings.reduce((sum, opening) => sum + opening.seen, 0),
    first: first ?? null,
    firstMinutes: first?.minutes ?? 0,
    firstSeen: first?.seen ?? 0,
  };
}

/** Minutes of a test where everything lies in reach. */
const workMinutes = ({ kind, plugsParted }: PossibleTest): number =>
  testMinutes[kind] + partingMinutes * plugsParted;

/** Lets the first few of each kind pass. */
function fewOfKind(): (each: { readonly test: PossibleTest }) => boolean {
  const passed = new Map<PossibleTest['kind'], number>();
  return ({ test: { kind } }) => {
    const before = passed.get(kind) ?? 0;
    passed.set(kind, before + 1);
    return before < mostOfKind;
  };
}

/** Minutes of a test with what must come off to reach it. */
function reachMinutes({ map, off }: TestQuestion, test: PossibleTest): number {
  let minutes = workMinutes(test);
  for (const id of offClosure(map.panels, test.panelIds))
    if (!off.has(id)) minutes += map.panels.get(id)?.minutesOff ?? 0;
  return minutes;
}

interface TestWorth {
  /** Mean minutes until the fault is seen when the test is done now; its own included. */
  readonly minutes: number;
  readonly testMinutes: number;
  readonly takeOff: readonly PanelId[];
  readonly outcomes: readonly TestOutcome[];
}

function worthOf(
  question: TestQuestion,
  test: PossibleTest,
  probability: Float64Array,
  off: ReadonlySet<PanelId>,
): TestWorth {
  const { panels } = question.map;
  const reached = offClosure(panels, test.panelIds);
  const missing = [...reached].filter((id) => !off.has(id));
  const after = new Set([...off, ...reached]);
  const minutes = missing.reduce((sum, id) => sum + (panels.get(id)?.minutesOff ?? 0), workMinutes(test));
  let seen = 0;
  let work = 0;
  const ways: (TestOutcome & { readonly label: OutcomeLabel })[] = [];
  test.chances.forEach((chance, y) => {
    let chanceOf = 0;
    for (let i = 0; i < probability.length; i++)
      chanceOf += (probability[i] as number) * (chance[i] as number);
    if (chanceOf < 1e-6) return;
    const then = probability.map((p, i) => (p * (chance[i] as number)) / chanceOf);
    const plan = planAfter(question, then, after);
    seen += chanceOf * plan.seen;
    work += chanceOf * plan.seen * plan.minutes;
    ways.push({
      label: test.labels[y] as OutcomeLabel,
      probability: chanceOf,
      expectedMinutes: plan.minutes,
      first: plan.first && {
        takeOff: plan.first.takeOff,
        segmentIds: [...new Set(plan.first.looks.map(({ segmentId }) => segmentId))],
        nodeIds: plan.first.looks.flatMap(({ nodeId }) => nodeId ?? []),
      },
    });
  });
  return {
    minutes: minutes + (seen > 0 ? work / seen : 0),
    testMinutes: minutes,
    takeOff: takeOffOrder(panels, missing) ?? missing,
    outcomes: joinAlike(ways),
  };
}

/** Neighbouring figures after which the same place is opened first are one outcome to the user. */
function joinAlike(ways: readonly TestOutcome[]): TestOutcome[] {
  const joined: TestOutcome[] = [];
  for (const way of ways) {
    const last = joined.at(-1);
    if (
      last?.label.what === 'figure' &&
      way.label.what === 'figure' &&
      JSON.stringify(last.first) === JSON.stringify(way.first)
    ) {
      const probability = last.probability + way.probability;
      const minutes = last.probability * last.expectedMinutes + way.probability * way.expectedMinutes;
      joined[joined.length - 1] = {
        label: {
          ...last.label,
          from: Math.min(last.label.from, way.label.from),
          to: Math.max(last.label.to, way.label.to),
          toMm: way.label.toMm,
        },
        probability,
        expectedMinutes: minutes / probability,
        first: last.first,
      };
    } else joined.push(way);
  }
  return joined;
}

/** Whether opening the first place before the test is quicker still than the test at once. */
function waitingPays(question: TestQuestion, test: PossibleTest, now: PlanAhead, atOnce: number): boolean {
  if (!now.first || now.seen <= 0) return false;
  const { cells, probability, map } = question;
  const ranges = now.first.looks.filter(({ nodeId }) => nodeId === null);
  const quality = now.first.looks[0]?.quality ?? 0.9;
  const looked = soundLook(ranges, quality)(cells);
  const left = probability.map((p, i) => p * Math.exp(looked[i] as number));
  const total = left.reduce((sum, p) => sum + p, 0);
  if (!(total > 0)) return false;
  const off = new Set([...question.off, ...offClosure(map.panels, now.first.takeOff)]);
  const later = worthOf(
    question,
    test,
    left.map((p) => p / total),
    off,
  );
  const share = now.firstSeen / now.seen;
  return now.firstMinutes + (1 - share) * later.minutes < atOnce - tieMinutes;
}
