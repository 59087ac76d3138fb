import type { PastSums } from '#core/history/teach.ts';
import type { Job } from '#core/job/job-document.ts';
import type { OpeningFirmness } from '#core/job/rank-sensitivity.ts';
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
  /** A quick answer without tests; the whole one to the same question follows. */
  readonly partial?: true;
}

/** How firm the first openings of an answer are; comes after the whole answer, when nothing newer is asked. */
export interface FirmAnswer {
  readonly revision: number;
  readonly firmness: readonly OpeningFirmness[];
}

/** Ranks off the main thread. Of questions asked while it works only the newest is answered. */
export interface Ranker {
  ask(question: RankQuestion): void;
  /** What past jobs taught, for every question from now on; null for nothing. */
  teach(past: PastSums | null): void;
  stop(): void;
}

/** Makes a ranker for one map; the answers come one at a time. */
export type MakeRanker = (map: MapDocument, answer: (answer: RankAnswer | FirmAnswer) => void) => Ranker;

/** What the worker is told: the map once, past jobs when they are known, then jobs. */
export type RankMessage =
  | { readonly map: MapDocument }
  | { readonly past: PastSums | null }
  | { readonly question: RankQuestion };

/** A ranker in a worker of its own. */
export const workerRanker: MakeRanker = (map, answer) => {
  const worker = new Worker(new URL('./rank-worker.ts', import.meta.url), { type: 'module' });
  let asked = 0;
  worker.addEventListener('message', (event: MessageEvent<RankAnswer | FirmAnswer>) => answer(event.data));
  worker.addEventListener('error', (event) => {
    answer({
      revision: asked,
      result: fail({ code: 'our-bug', detail: event.message || 'rank worker stopped' }),
    });
  });
  worker.postMessage({ map } satisfies RankMessage);
  return {
    ask(question) {
      asked = question.revision;
      worker.postMessage({ question } satisfies RankMessage);
    },
    teach(past) {
      worker.postMessage({ past } satisfies RankMessage);
    },
    stop() {
      worker.terminate();
    },
  };
};
