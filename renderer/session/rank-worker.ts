import { rank } from '#core/job/rank.ts';
import { createReadingsCache } from '#core/job/readings-cache.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { assert } from '#core/quantity/assert.ts';
import { fail } from '#core/quantity/result.ts';
import type { RankAnswer, RankMessage, RankQuestion } from './ranker.ts';

const cache = createReadingsCache();
let map: MapDocument | null = null;
let newest: RankQuestion | null = null;
let working = false;
/** The readings whose whole answer is remembered already. */
let heard: string | null = null;

/** Answers the newest question, quickly first where new readings make the whole answer slow; older questions are dropped. */
async function work(): Promise<void> {
  working = true;
  while (newest) {
    const question: RankQuestion = newest;
    newest = null;
    const readings = readingsOf(question);
    if (readings !== heard && readings !== null) {
      self.postMessage({ ...answerTo(question, true), partial: true } satisfies RankAnswer);
      await turn();
      if (newest) continue;
    }
    self.postMessage(answerTo(question, false));
    heard = readings;
    await turn();
  }
  working = false;
}

function answerTo({ revision, job }: RankQuestion, quick: boolean): RankAnswer {
  assert(map, 'the worker was given the map first');
  try {
    const options = quick ? { readingDraws: 0 } : { withTests: true };
    return { revision, result: rank(map, job, { ...options, readingsCache: cache }) };
  } catch (error) {
    return { revision, result: fail({ code: 'our-bug', detail: String(error) }) };
  }
}

/** What the slow part of an answer depends on; null without readings, when there is no slow part. */
function readingsOf({ job }: RankQuestion): string | null {
  const readings = standingEntries(job).filter((entry) => entry.type === 'reading');
  return readings.length === 0 ? null : JSON.stringify([job.circuitId, readings]);
}

/** Lets questions that came meanwhile be heard. */
const turn = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

self.addEventListener('message', (event: MessageEvent<RankMessage>) => {
  if ('map' in event.data) map = event.data.map;
  else {
    newest = event.data.question;
    if (!working) void work();
  }
});
