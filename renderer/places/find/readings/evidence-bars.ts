import type { EvidenceBar } from '../../../straight/straight-view-props.ts';
import type { FindView } from '../find-context.ts';
import { effectRanges, numberedReadings } from './numbered-readings.ts';
import { readingLine } from './reading-line.ts';

/**
 * A bar for each standing reading: its number, its words, and where it alone puts the fault. Readings
 * not yet worked out or not used have their row as well, so that nothing moves when the answer comes.
 */
export function evidenceBars(view: FindView): readonly EvidenceBar[] {
  const { ranking } = view.open;
  const effects = new Map(ranking?.readings.map((effect) => [effect.entryId, effect]));
  const doubtful = new Set(ranking?.contradictions.flatMap(({ entryIds }) => entryIds));
  return numberedReadings(view.standing).map(({ number, entry }) => {
    const effect = effects.get(entry.id);
    return {
      key: entry.id,
      label: String(number),
      name: readingLine(entry, view),
      pieces: effect ? effectRanges(effect) : [],
      doubtful: doubtful.has(entry.id),
    };
  });
}
