import { parentPort, workerData } from 'node:worker_threads';
import type { PriorShape } from '#core/locate/prior.ts';
import { type EndsLie, type MeteredTrial, meteredTrial } from './metered-trial.ts';
import { type Trial, trial } from './trial.ts';
import { triedShapes } from './vehicle-plan.ts';

/** Some of the cars of one run, to be searched in one thread. */
export interface TrialShare {
  readonly seed: number;
  /** Numbers of the cars: `from`, `from + step` and so on up to but not `to`. */
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** With a meter, the ends lying so; null without any. */
  readonly ends: EndsLie | null;
  readonly prior?: PriorShape | undefined;
}

/** What became of one car, by its number. */
export type NumberedTrial<T = Trial | MeteredTrial> = readonly [number: number, trial: T];

const { seed, from, to, step, ends, prior } = workerData as TrialShare;
const done: NumberedTrial[] = [];
for (let i = from; i < to; i += step) {
  const shape = triedShapes[i % triedShapes.length] as (typeof triedShapes)[number];
  done.push([i, ends ? meteredTrial(seed + i, shape, ends) : trial(seed + i, shape, prior)]);
}
parentPort?.postMessage(done);
