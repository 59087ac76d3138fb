import { type History, teachSums } from '#core/history/teach.ts';
import { rank } from '#core/job/rank.ts';
import { beginSensitivity, usualDraws } from '#core/job/rank-sensitivity.ts';
import { createReadingsCache } from '#core/job/readings-cache.ts';
import { standingEntries } from '#core/job/standing-entries.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { assert } from '#core/quantity/assert.ts';
import { fail } from '#core/quantity/result.ts';
import type { FirmAnswer, RankAnswer, RankMessage, RankQuestion } from './ranker.ts';

const cache = createReadingsCache();
let map: MapDocument | null = null;
/** What past jobs teach about the map; kept as it is, for answers are remembered by it. */
let history: History | null = null;
let newest: RankQuestion | null = null;
let working = false;
/** The order last told, for its circuit: kept where a new one gains next to nothing, so that ties do not shuffle. */
let told: { readonly circuitId: string | null; readonly order: readonly string[] | undefined } | null = null;
/** How long the last whole answer took; the first is not waited for either. */
let wholeMs = Number.POSITIVE_INFINITY;
/** A whole answer that takes longer is told in two parts. */
const longWaitMs = 200;
/** The readings whose whole answer is remembered already. */
let heard: string | null = null;

/** Openings of which it is worked out what beginning there would lose. */
const regretSteps = 12;
/** Draws after which a first answer is told; the rest make it surer. */
const firstDraws = 40;
/** On a very long circuit fewer draws must do: after this time no more are begun. */
const longestDrawingMs = 6_000;
/** Draws are made in pieces of this length, so that a new question waits for none of them. */
const pieceMs = 12;

/** Answers the newest question, quickly first where new readings make the whole answer slow; older questions are dropped. */
async function work(): Promise<void> {
  working = true;
  while (newest) {
    const question: RankQuestion = newest;
    newest = null;
    const readings = readingsOf(question);
    const unheard = readings !== heard && readings !== null;
    if (unheard || wholeMs > longWaitMs) {
      self.postMessage({
        ...answerTo(question, unheard ? 'quick' : 'soon'),
        partial: true,
      } satisfies RankAnswer);
      await turn();
      if (newest) continue;
    }
    const begun = performance.now();
    self.postMessage(answerTo(question, 'whole'));
    wholeMs = performance.now() - begun;
    heard = readings;
    await turn();
    if (!newest) await tellFirmness(question);
  }
  working = false;
}

/** `quick` leaves out what new readings take long to say; `soon` only the tests that might pay. */
const answers = {
  quick: { readingDraws: 0 },
  soon: { withTold: true, regretSteps },
  whole: { withTold: true, regretSteps, withTests: true },
} as const;

function answerTo({ revision, job }: RankQuestion, kind: keyof typeof answers): RankAnswer {
  assert(map, 'the worker was given the map first');
  try {
    const keepOrder = told?.circuitId === job.circuitId ? told.order : undefined;
    const result = rank(map, job, { ...answers[kind], history, keepOrder, readingsCache: cache });
    if (kind === 'whole' && result.ok) told = { circuitId: job.circuitId, order: result.value.lookOrder };
    return { revision, result };
  } catch (error) {
    return { revision, result: fail({ code: 'our-bug', detail: String(error) }) };
  }
}

/** Whether the first openings hold under other constants, unless something newer is asked meanwhile. */
async function tellFirmness({ revision, job }: RankQuestion): Promise<void> {
  assert(map, 'the worker was given the map first');
  const begun = beginSensitivity(map, job, { history });
  if (!begun.ok) return;
  const giveUp = performance.now() + longestDrawingMs;
  let first = true;
  for (let drawn = 0; drawn < usualDraws && (first || performance.now() < giveUp); ) {
    const end = performance.now() + pieceMs;
    do {
      begun.value.draw(1);
      drawn++;
    } while (drawn < usualDraws && performance.now() < end);
    await turn();
    if (newest) return;
    if (!first || drawn < firstDraws) continue;
    first = false;
    self.postMessage({ revision, firmness: begun.value.soFar() } satisfies FirmAnswer);
  }
  self.postMessage({ revision, firmness: begun.value.soFar() } satisfies FirmAnswer);
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
  else if ('past' in event.data) {
    const { past } = event.data;
    history = past && map ? teachSums(past, map) : null;
  } else {
    newest = event.data.question;
    if (!working) void work();
  }
});
