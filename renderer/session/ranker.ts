import type { Job } from '#core/job/job-document.ts';
import type { Ranking } from '#core/job/ranking.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { fail, type Result } from '#core/quantity/result.ts';

/** One job to rank, tagged so that a late answer can be told from the one wanted. */
export interface RankQuestion {
  readonly revision: number;
  readonly job: Job;
}

export interface RankAnswer {
  readonly revision: number;
  readonly result: Result<Ranking>;
}

/** Ranks off the main thread. Questions asked while it works are thinned to the newest. */
export interface Ranker {
  ask(question: RankQuestion): void;
  stop(): void;
}

/** Makes a ranker for one map; the answers come one at a time. */
export type MakeRanker = (map: MapDocument, answer: (answer: RankAnswer) => void) => Ranker;

/** What the worker is told: the map once, then jobs. */
export type RankMessage = { readonly map: MapDocument } | { readonly question: RankQuestion };

/** A ranker in a worker of its own. */
export const workerRanker: MakeRanker = (map, answer) => {
  const worker = new Worker(new URL('./rank-worker.ts', import.meta.url), { type: 'module' });
  let working: number | null = null;
  let waiting: RankQuestion | null = null;
  const send = (question: RankQuestion): void => {
    working = question.revision;
    worker.postMessage({ question } satisfies RankMessage);
  };
  const done = (given: RankAnswer): void => {
    working = null;
    const next = waiting;
    waiting = null;
    if (next) send(next);
    answer(given);
  };
  worker.addEventListener('message', (event: MessageEvent<RankAnswer>) => done(event.data));
  worker.addEventListener('error', (event) => {
    if (working === null) return;
    done({
      revision: working,
      result: fail({ code: 'our-bug', detail: event.message || 'rank worker stopped' }),
    });
  });
  worker.postMessage({ map } satisfies RankMessage);
  return {
    ask(question) {
      if (working === null) send(question);
      else waiting = question;
    },
    stop() {
      worker.terminate();
    },
  };
};
