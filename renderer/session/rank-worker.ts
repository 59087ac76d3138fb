import { rank } from '#core/job/rank.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { assert } from '#core/quantity/assert.ts';
import { fail } from '#core/quantity/result.ts';
import type { RankAnswer, RankMessage, RankQuestion } from './ranker.ts';

let map: MapDocument | null = null;

const answerTo = ({ revision, job }: RankQuestion): RankAnswer => {
  assert(map, 'the worker was given the map first');
  try {
    return { revision, result: rank(map, job) };
  } catch (error) {
    return { revision, result: fail({ code: 'our-bug', detail: String(error) }) };
  }
};

self.addEventListener('message', (event: MessageEvent<RankMessage>) => {
  if ('map' in event.data) map = event.data.map;
  else self.postMessage(answerTo(event.data.question));
});
