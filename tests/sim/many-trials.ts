import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { PriorShape } from '#core/locate/prior.ts';
import type { EndsLie, MeteredTrial } from './metered-trial.ts';
import type { Trial } from './trial.ts';
import type { NumberedTrial, TrialShare } from './trial-worker.ts';

/** Searches many cars on every core of the machine; cars are drawn by number, so the cores do not matter. */
export function manyTrials(seed: number, cars: number, prior?: PriorShape): Promise<Trial[]> {
  return shared<Trial>({ seed, to: cars, ends: null, prior });
}

/** The same with a meter. */
export function manyMeteredTrials(seed: number, cars: number, ends: EndsLie): Promise<MeteredTrial[]> {
  return shared<MeteredTrial>({ seed, to: cars, ends });
}

async function shared<T>(share: Omit<TrialShare, 'from' | 'step'>): Promise<T[]> {
  const step = availableParallelism();
  const parts = Array.from({ length: step }, (_, from) => inWorker<T>({ ...share, from, step }));
  const numbered = (await Promise.all(parts)).flat();
  return numbered.sort(([a], [b]) => a - b).map(([, each]) => each);
}

function inWorker<T>(workerData: TrialShare): Promise<NumberedTrial<T>[]> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL('./trial-worker.ts', import.meta.url), { workerData });
    worker.once('message', resolve);
    worker.once('error', reject);
  });
}
