import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { type PriorShape, usualPriorShape } from '#core/locate/prior.ts';
import type { BodyStyle } from '#core/map/kinds.ts';
import { manyMeteredTrials, manyTrials } from './many-trials.ts';
import { meteredTable } from './metered-report.ts';
import { type MeteredGroup, summariseMetered } from './metered-summary.ts';
import { endsLie } from './metered-trial.ts';
import { bodyPicture, meteredPicture, picture } from './picture.ts';
import { aimTable, reportText, type SimulationReport, searchTable } from './report.ts';
import { type Summary, summarise } from './summary.ts';
import { triedShapes } from './vehicle-plan.ts';

/**
 * `npm run sim`: what the tool is worth, on invented cars with faults that do not come from its model.
 * Writes tests/results/sim/report.md and its pictures. Some minutes. `-- --seed N --cars N` for another draw.
 */
const { values } = parseArgs({ options: { seed: { type: 'string' }, cars: { type: 'string' } } });
const seed = Number(values.seed ?? 50_000);
const cars = Number(values.cars ?? 500);
if (!Number.isInteger(seed) || !Number.isInteger(cars) || cars < triedShapes.length) {
  console.error(`--seed takes a whole number, --cars one of ${triedShapes.length} or more.`);
  process.exit(1);
}

/** Other ways of believing the hazard, on a fifth of the cars; the first is what was used before. */
const priors: readonly PriorShape[] = [
  { hazardExponent: 1, evenFloor: 0.05 },
  { hazardExponent: 1, evenFloor: 0.2 },
  { hazardExponent: 0.8, evenFloor: 0.1 },
  usualPriorShape,
  { hazardExponent: 0.6, evenFloor: 0.2 },
  { hazardExponent: 0.6, evenFloor: 0.3 },
  { hazardExponent: 0, evenFloor: 1 },
];

const byShape = <T extends { readonly shape: BodyStyle }, S>(
  trials: readonly T[],
  summary: (trials: readonly T[]) => S,
) => triedShapes.map((shape) => ({ shape, summary: summary(trials.filter((each) => each.shape === shape)) }));

const tried = await manyTrials(seed, cars);
const metered: MeteredGroup[] = [];
for (const ends of endsLie) {
  const searched = await manyMeteredTrials(seed, cars, ends);
  metered.push({ ends, all: summariseMetered(searched), byShape: byShape(searched, summariseMetered) });
}
const byPrior: { prior: PriorShape; summary: Summary }[] = [];
for (const prior of priors)
  byPrior.push({ prior, summary: summarise(await manyTrials(seed, Math.ceil(cars / 5), prior)) });
const report: SimulationReport = {
  date: new Date().toISOString().slice(0, 10),
  seed,
  all: summarise(tried),
  metered,
  byShape: byShape(tried, summarise),
  byPrior,
};
const folder = join(import.meta.dirname, '../results/sim');
mkdirSync(folder, { recursive: true });
writeFileSync(join(folder, 'report.md'), reportText(report));
writeFileSync(join(folder, 'minutes.svg'), picture(report.all, `seed ${seed}`));
for (const group of metered) {
  const name = group.ends.replaceAll(' ', '-');
  writeFileSync(
    join(folder, `metered-${name}.svg`),
    meteredPicture(group.all, `ends ${group.ends}, seed ${seed}`),
  );
  writeFileSync(
    join(folder, `bodies-${name}.svg`),
    bodyPicture(group.byShape, `ends ${group.ends}, seed ${seed}`),
  );
}
for (const { ends, all } of metered) console.log(`Ends ${ends}\n${meteredTable(all)}\n`);
console.log(`${searchTable(report.all)}\n\n${aimTable(report)}\n\nWritten to ${folder}`);
