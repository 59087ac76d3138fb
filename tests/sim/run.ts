import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { type PriorShape, usualPriorShape } from '#core/locate/prior.ts';
import { meteredTable } from './metered-report.ts';
import { summariseMetered } from './metered-summary.ts';
import { endsLie, meteredTrial } from './metered-trial.ts';
import { bodyPicture, meteredPicture, picture } from './picture.ts';
import { aimTable, reportText, type SimulationReport, searchTable } from './report.ts';
import { summarise } from './summary.ts';
import { type Trial, trial } from './trial.ts';
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

const shapeOf = (i: number) => triedShapes[i % triedShapes.length] as (typeof triedShapes)[number];
const trials = (count: number, prior?: PriorShape): Trial[] =>
  Array.from({ length: count }, (_, i) => trial(seed + i, shapeOf(i), prior));

const tried = trials(cars);
const metered = endsLie.map((ends) => {
  const searched = Array.from({ length: cars }, (_, i) => meteredTrial(seed + i, shapeOf(i), ends));
  return {
    ends,
    all: summariseMetered(searched),
    byShape: triedShapes.map((shape) => ({
      shape,
      summary: summariseMetered(searched.filter((each) => each.shape === shape)),
    })),
  };
});
const report: SimulationReport = {
  date: new Date().toISOString().slice(0, 10),
  seed,
  all: summarise(tried),
  metered,
  byShape: triedShapes.map((shape) => ({
    shape,
    summary: summarise(tried.filter((each) => each.shape === shape)),
  })),
  byPrior: priors.map((prior) => ({ prior, summary: summarise(trials(Math.ceil(cars / 5), prior)) })),
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
