import type { PriorShape } from '#core/locate/prior.ts';
import type { BodyStyle } from '#core/map/kinds.ts';
import { meteredAims, meteredText } from './metered-report.ts';
import type { MeteredGroup } from './metered-summary.ts';
import { met, minutes, percent, table } from './report-table.ts';
import type { Summary } from './summary.ts';
import { truthFigures } from './true-fault.ts';

/** Everything one run of the trials found. */
export interface SimulationReport {
  readonly date: string;
  readonly seed: number;
  readonly all: Summary;
  readonly byShape: readonly { readonly shape: BodyStyle; readonly summary: Summary }[];
  /** The same cars, one fault each, searched with a meter; by how the circuit's ends lie. */
  readonly metered: readonly MeteredGroup[];
  readonly byPrior: readonly { readonly prior: PriorShape; readonly summary: Summary }[];
}

/** Mean minutes and share found at the first opening, one line for each way of searching. */
export function searchTable({ plan, rules, knowing }: Summary): string {
  const line = (name: string, score: { minutes: number; firstOpening: number }): string[] => [
    name,
    minutes(score.minutes),
    (score.minutes / plan.minutes).toFixed(2),
    percent(score.firstOpening),
  ];
  return table(
    ['way of searching', 'mean minutes to find', 'times the plan', 'found at first opening'],
    [
      line('the plan', plan),
      ...rules.map((each) => line(`${each.rule} (${each.habit})`, each)),
      line('best plan for one who knew the true chances', knowing),
    ],
  );
}

/** What was aimed at and what came out, missed aims said so. */
export function aimTable({ all, metered }: Pick<SimulationReport, 'all' | 'metered'>): string {
  const eighty = all.covered[1] as Summary['covered'][number];
  return table(
    ['aim', 'came out', ''],
    [
      [
        'the plan within 0.5 % of the proved best by its own chances',
        `mean ${percent(all.own.mean - 1)}, worst ${percent(all.own.worst - 1)} (${all.own.proved} of ${all.trials} proved)`,
        met(all.own.mean <= 1.005),
      ],
      [
        'the same for a plan made without any search',
        `mean ${percent(all.own.quickMean - 1)}, worst ${percent(all.own.quickWorst - 1)}`,
        met(all.own.quickMean <= 1.005 && all.own.quickWorst <= 1.03),
      ],
      [
        'without a meter: mean minutes at most 0.6 of the best simple order',
        `${all.planToBestRule.toFixed(2)} ± ${all.planToBestRuleError.toFixed(2)}; one who knew the true chances: ${all.knowingToBestRule.toFixed(2)}`,
        met(all.planToBestRule <= 0.6),
      ],
      [
        'without a meter: the 80 % region holds 76 to 84 % of the faults',
        `${percent(eighty.found)} ± ${percent(eighty.error)}`,
        met(eighty.found >= 0.76 && eighty.found <= 0.84),
      ],
      ...metered.flatMap(meteredAims),
    ],
  );
}

/** The whole report as text. */
export function reportText(report: SimulationReport): string {
  const { all, byShape, byPrior, date, seed } = report;
  const shapes = table(
    ['body', 'cars', 'plan', 'best simple order', 'plan over it', '80 % region holds', 'bits'],
    byShape.map(({ shape, summary }) => [
      shape,
      String(summary.trials),
      minutes(summary.plan.minutes),
      `${minutes(summary.bestRule.minutes)} (${summary.bestRule.rule})`,
      summary.planToBestRule.toFixed(2),
      percent(summary.covered[1]?.found ?? 0),
      summary.bits.toFixed(2),
    ]),
  );
  const priors = table(
    ['exponent', 'even floor', 'mean minutes', '50 %', '80 %', '95 %', 'bits'],
    byPrior.map(({ prior, summary }) => [
      String(prior.hazardExponent),
      String(prior.evenFloor),
      minutes(summary.plan.minutes),
      ...summary.covered.map(({ found }) => percent(found)),
      summary.bits.toFixed(3),
    ]),
  );
  return `# Trials on invented cars

${date}, seed ${seed}, ${all.trials} cars of five body shapes, 15 to 60 panels, 20 to 120 runs, circuits of
3 m and more where the body has any.

The faults do not come from the model: its hazard under heavy-tailed noise (a factor of about three),
${percent(truthFigures.unmapped[0])} to ${percent(truthFigures.unmapped[1])} of them at rub spots nobody mapped, ${percent(truthFigures.anywhere)} anywhere, lengths
wrong by ${percent(truthFigures.lengthError)}. Everybody knows the reported failure type and, where a plug can be reached and the
fault is a short, on which side of it the fault is.

${report.metered.map(meteredText).join('\n\n')}

# Without any meter

The same cars without readings and without planning again. Means are exact over where the fault may be and what
a look overlooks; only the cars are drawn.

## Ways of searching

${searchTable(all)}

## Aims

${aimTable(report)}

## Do the stated regions hold the fault?

${table(
  ['region said to hold', 'holds', 'standard error'],
  all.covered.map(({ share, found, error }) => [percent(share), percent(found), percent(error)]),
)}

Log score: ${all.bits.toFixed(3)} bits better than knowing nothing.

## By body

${shapes}

## How far to believe the hazard

The first line is the hazard taken as it is with a floor of 0.05, as it was before these trials.

${priors}
`;
}
