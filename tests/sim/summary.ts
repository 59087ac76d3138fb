import { regionShares } from './calibration.ts';
import { type SimpleRule, simpleRules } from './rule-keys.ts';
import type { SearchScore } from './search-score.ts';
import type { Trial } from './trial.ts';

/** What a technician does with the other places in view when one is opened. */
export const ruleHabits = ['looks at all in view', 'looks only where it chose'] as const;

/** A region said to hold a share of the faults, and the share it held, with one standard error. */
export interface Share {
  readonly share: number;
  readonly found: number;
  readonly error: number;
}

/** One simple rule over all trials, at the better of its two habits. */
export interface RuleSummary extends SearchScore {
  readonly rule: SimpleRule;
  readonly habit: (typeof ruleHabits)[number];
}

/** What many trials come to. */
export interface Summary {
  readonly trials: number;
  readonly plan: SearchScore;
  readonly knowing: SearchScore;
  readonly rules: readonly RuleSummary[];
  /** The rule with the least mean minutes. */
  readonly bestRule: RuleSummary;
  /** Mean minutes of the plan over those of the best rule, and of someone who knew the true chances. */
  readonly planToBestRule: number;
  readonly knowingToBestRule: number;
  /** One standard error of the first of these, from the spread over trials. */
  readonly planToBestRuleError: number;
  /** Plan given, and one made without search, over the proved best by the tool's own chances. */
  readonly own: {
    readonly mean: number;
    readonly worst: number;
    readonly quickMean: number;
    readonly quickWorst: number;
    /** Trials whose best could be proved. */
    readonly proved: number;
  };
  /** True chance inside the 50, 80 and 95 percent regions, with one standard error each. */
  readonly covered: readonly Share[];
  readonly bits: number;
}

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

export const standardError = (values: readonly number[]): number => {
  const middle = mean(values);
  return Math.sqrt(mean(values.map((value) => (value - middle) ** 2)) / values.length);
};

const meanScore = (scores: readonly SearchScore[]): SearchScore => ({
  minutes: mean(scores.map(({ minutes }) => minutes)),
  firstOpening: mean(scores.map(({ firstOpening }) => firstOpening)),
});

/** Sums trials up. A rule's habit is chosen once for all trials, not trial by trial. */
export function summarise(trials: readonly Trial[]): Summary {
  const plan = meanScore(trials.map((each) => each.plan));
  const knowing = meanScore(trials.map((each) => each.knowing));
  const byRule = simpleRules.map((rule) =>
    ([0, 1] as const)
      .map((habit) => ({
        rule,
        habit: ruleHabits[habit],
        ofTrials: trials.map((each) => each.rules[rule][habit].minutes),
        ...meanScore(trials.map((each) => each.rules[rule][habit])),
      }))
      .reduce((a, b) => (b.minutes < a.minutes ? b : a)),
  );
  const best = byRule.reduce((a, b) => (b.minutes < a.minutes ? b : a));
  const planToBestRule = plan.minutes / best.minutes;
  const residues = trials.map((each, i) => each.plan.minutes - planToBestRule * (best.ofTrials[i] as number));
  const provedOnes = trials.flatMap(({ own: { given, quick, best: proved } }) =>
    proved === null ? [] : [{ given: given / proved, quick: quick / proved }],
  );
  const given = provedOnes.map((each) => each.given);
  const quick = provedOnes.map((each) => each.quick);
  const rules = byRule.map(({ ofTrials: _, ...rule }) => rule);
  return {
    trials: trials.length,
    plan,
    knowing,
    rules,
    bestRule: rules.find(({ rule }) => rule === best.rule) as RuleSummary,
    planToBestRule,
    knowingToBestRule: knowing.minutes / best.minutes,
    planToBestRuleError: standardError(residues) / best.minutes,
    own: {
      mean: mean(given),
      worst: Math.max(...given),
      quickMean: mean(quick),
      quickWorst: Math.max(...quick),
      proved: provedOnes.length,
    },
    covered: regionShares.map((share, i) => {
      const found = trials.map(({ calibration }) => calibration.covered[i] as number);
      return { share, found: mean(found), error: standardError(found) };
    }),
    bits: mean(trials.map(({ calibration }) => calibration.bits)),
  };
}
