import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import type { Job } from '#core/job/job-document.ts';
import type { Ranking, ReadingEffect } from '#core/job/ranking.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { digWords } from '#renderer/language/dig.ts';
import { flatSentence, testWords, unusedWords } from '#renderer/language/readings.ts';
import { sayWhere, whereLine } from '#renderer/language/say-where.ts';
import { wrapText } from './wrap-text.ts';

/** What each reading did, and which cannot all hold, as lines; none without readings. */
export function readingsText(map: MapDocument, line: CircuitLine, job: Job, ranking: Ranking): string[] {
  const { readings, contradictions } = ranking;
  if (readings.length === 0) return [];
  const number = new Map(readings.map(({ entryId }, i) => [entryId, i + 1]));
  const lines = readings.flatMap((effect, i) => {
    const entry = job.entries.find(({ id }) => id === effect.entryId);
    const test = entry?.type === 'reading' ? testWords[entry.reading.test] : '';
    return wrapText(digWords.reading(i + 1, test, effectWords(map, line, effect)), 4, '  ');
  });
  const torn = contradictions.flatMap(({ entryIds, unless }) => {
    const numbers = entryIds.map((id) => number.get(id)).join(', ');
    return wrapText(digWords.torn(numbers, digWords.unless[unless]), 4, '  ! ');
  });
  return [digWords.readings, ...lines, ...torn];
}

function effectWords(
  map: MapDocument,
  line: CircuitLine,
  { interval, bits, flat, unused }: ReadingEffect,
): string {
  if (unused) return unusedWords[unused];
  if (flat) return flatSentence(flat, 'metric');
  const told = bits < 0.005 ? digWords.toldNothing : digWords.told(bits.toFixed(2));
  if (interval === 'everywhere') return `${digWords.aloneNothing} ${told}`;
  const places = interval.map(({ fromMm, toMm }) => whereLine(sayWhere(map, line, fromMm, toMm, 'metric')));
  return `${digWords.alone(places.join('; '))} ${told}`;
}
