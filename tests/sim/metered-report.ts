import type { MeteredGroup, MeteredSummary, WaySummary } from './metered-summary.ts';
import { met, minutes, percent, table } from './report-table.ts';

/** Mean minutes of every way of searching with one standard error, over the best simple order. */
export function meteredTable({
  tool,
  toolWithoutMeter,
  rules,
  bestRule,
  byProportion,
  atOnce,
}: MeteredSummary): string {
  const line = (name: string, way: WaySummary): string[] => [
    name,
    `${minutes(way.minutes)} ± ${minutes(way.error)}`,
    (way.minutes / bestRule.minutes).toFixed(2),
    (tool.minutes / way.minutes).toFixed(2),
    percent(way.firstOpening),
  ];
  return table(
    [
      'way of searching',
      'mean minutes to find',
      'over the best simple order',
      'the tool over it',
      'found with trim off once at most',
    ],
    [
      line('the tool, its tests done and its order made anew after every look', tool),
      line('the tool without its tests', toolWithoutMeter),
      ...rules.map((rule) => line(`${rule.rule} (${rule.habit})`, rule)),
      line('the same meter without the tool: one test from both ends, then outwards', byProportion),
      line('straight to the fault, its place known', atOnce),
    ],
  );
}

/** One part of the report. */
export function meteredText({ ends, all, byShape }: MeteredGroup): string {
  const share = (summary: MeteredSummary, i: number): string => percent(summary.covered[i]?.found ?? 0);
  const shapes = table(
    [
      'body',
      'cars',
      'tool',
      'best simple order',
      'tool over it',
      'trim off once at most',
      '50 %',
      '80 %',
      '95 %',
      'bits',
    ],
    byShape.map(({ shape, summary }) => [
      shape,
      String(summary.trials),
      minutes(summary.tool.minutes),
      `${minutes(summary.bestRule.minutes)} (${summary.bestRule.rule})`,
      `${summary.toBestRule.toFixed(2)} ± ${summary.toBestRuleError.toFixed(2)}`,
      percent(summary.tool.firstOpening),
      share(summary, 0),
      share(summary, 1),
      share(summary, 2),
      summary.bits.toFixed(2),
    ]),
  );
  const tests = [...all.tests].map(([kind, times]) => `${kind} ${times}`).join(', ');
  return `# With a meter, the circuit’s ends ${ends}

${all.trials} faults, one a car. A hand meter that is wrong in its own way all along, wire and plugs off what the map says.
Tests were done on ${percent(all.tested)} of the cars, ${minutes(all.testMinutes)} minutes on average: ${tests || 'none'}. ${all.givenUp} searches were given up.

${meteredTable(all)}

The regions said to hold 50, 80 and 95 percent when the first place is looked at hold ${all.covered
    .map(({ found, error }) => `${percent(found)} ± ${percent(error)}`)
    .join(
      ', ',
    )}; log score ${all.bits.toFixed(2)} ± ${all.bitsError.toFixed(2)} bits better than knowing nothing.

${shapes}`;
}

/** What was aimed at with a meter and what came out. */
export function meteredAims({ ends, all }: MeteredGroup): string[][] {
  const eighty = all.covered[1] as MeteredSummary['covered'][number];
  return [
    [
      `with a meter, ends ${ends}: mean minutes at most 0.6 of the best simple order`,
      `${all.toBestRule.toFixed(2)} ± ${all.toBestRuleError.toFixed(2)}; straight to the fault: ${(all.atOnce.minutes / all.bestRule.minutes).toFixed(2)}`,
      met(all.toBestRule <= 0.6),
    ],
    [
      `with a meter, ends ${ends}: the 80 % region holds 76 to 84 % of the faults`,
      `${percent(eighty.found)} ± ${percent(eighty.error)}`,
      met(eighty.found >= 0.76 && eighty.found <= 0.84),
    ],
  ];
}
