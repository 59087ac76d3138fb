import type { NextTestKind } from '#core/job/next-test.ts';
import type { BodyStyle } from '#core/map/kinds.ts';
import { regionShares } from './calibration.ts';
import type { SearchOutcome } from './metered-search.ts';
import type { EndsLie, MeteredTrial } from './metered-trial.ts';
import { type SimpleRule, simpleRules } from './rule-keys.ts';
import { mean, ruleHabits, type Share, standardError } from './summary.ts';

/** What many searches of one way come to. */
export interface WaySummary {
  readonly minutes: number;
  /** One standard error of the mean. */
  readonly error: number;
  /** Share seen with trim taken off once at most. */
  readonly firstOpening: number;
}

/** What many cars searched with a meter come to. */
export interface MeteredSummary {
  readonly trials: number;
  readonly tool: WaySummary;
  readonly toolWithoutMeter: WaySummary;
  readonly atOnce: WaySummary;
  /** The same meter read by proportion, without the tool, at the better of both habits. */
  readonly byProportion: WaySummary;
  readonly rules: readonly (WaySummary & { readonly rule: SimpleRule; readonly habit: string })[];
  /** The rule with the least mean minutes. */
  readonly bestRule: MeteredSummary['rules'][number];
  /** Mean minutes with the tool over those of the best rule, one standard error beside it. */
  readonly toBestRule: number;
  readonly toBestRuleError: number;
  readonly covered: readonly Share[];
  readonly bits: number;
  readonly bitsError: number;
  /** How often each test was done, in all trials together. */
  readonly tests: ReadonlyMap<NextTestKind, number>;
  readonly testMinutes: number;
  /** Share of cars on which any test was done; searches broken off. */
  readonly tested: number;
  readonly givenUp: number;
}

/** Cars searched with a meter whose circuits' ends lie alike. */
export interface MeteredGroup {
  readonly ends: EndsLie;
  readonly all: MeteredSummary;
  readonly byShape: readonly { readonly shape: BodyStyle; readonly summary: MeteredSummary }[];
}

/** Sums searches up. A rule's habit is chosen once for all trials, not trial by trial. */
export function summariseMetered(trials: readonly MeteredTrial[]): MeteredSummary {
  const way = (outcomes: readonly SearchOutcome[]): WaySummary => ({
    minutes: mean(outcomes.map(({ minutes }) => minutes)),
    error: standardError(outcomes.map(({ minutes }) => minutes)),
    firstOpening: mean(outcomes.map(({ atFirstOpening }) => (atFirstOpening ? 1 : 0))),
  });
  const rules = simpleRules.map((rule) =>
    ruleHabits
      .map((habit, i) => {
        const outcomes = trials.map((each) => each.rules[rule][i as 0 | 1]);
        return { rule, habit, outcomes, ...way(outcomes) };
      })
      .reduce((a, b) => (b.minutes < a.minutes ? b : a)),
  );
  const best = rules.reduce((a, b) => (b.minutes < a.minutes ? b : a));
  const tool = way(trials.map((each) => each.tool));
  const toBestRule = tool.minutes / best.minutes;
  const residues = trials.map(
    (each, i) => each.tool.minutes - toBestRule * (best.outcomes[i] as SearchOutcome).minutes,
  );
  const told = rules.map(({ outcomes: _, ...rule }) => rule);
  const tests = new Map<NextTestKind, number>();
  for (const each of trials) for (const kind of each.tool.tests) tests.set(kind, (tests.get(kind) ?? 0) + 1);
  const bits = trials.map(({ calibration }) => calibration.bits);
  return {
    trials: trials.length,
    tool,
    toolWithoutMeter: way(trials.map((each) => each.toolWithoutMeter)),
    atOnce: way(trials.map((each) => each.atOnce)),
    byProportion: ([0, 1] as const)
      .map((habit) => way(trials.map((each) => each.byProportion[habit])))
      .reduce((a, b) => (b.minutes < a.minutes ? b : a)),
    rules: told,
    bestRule: told.find(({ rule }) => rule === best.rule) as (typeof told)[number],
    toBestRule,
    toBestRuleError: standardError(residues) / best.minutes,
    covered: regionShares.map((share, i) => {
      const found = trials.map(({ calibration }) => calibration.covered[i] as number);
      return { share, found: mean(found), error: standardError(found) };
    }),
    bits: mean(bits),
    bitsError: standardError(bits),
    tests: new Map([...tests].sort((a, b) => b[1] - a[1])),
    testMinutes: mean(trials.map((each) => each.tool.testMinutes)),
    tested: mean(trials.map((each) => (each.tool.tests.length > 0 ? 1 : 0))),
    givenUp: trials.filter((each) => each.tool.givenUp || each.toolWithoutMeter.givenUp).length,
  };
}
