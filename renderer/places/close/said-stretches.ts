import type { EntryOf } from '#core/job/job-document.ts';
import type { Stretch } from '#core/job/reading.ts';
import { joinRanges } from '#core/locate/station-ranges.ts';
import { closeWords } from '../../language/close.ts';
import { nameOf } from '../../language/name-of.ts';
import { whereLine } from '../../language/say-where.ts';
import { circuitRanges } from '../../session/stretches-between.ts';
import type { FindView } from '../find/find-context.ts';

/** Where something was found: the plug or other part it is in, else where its stretches lie. */
export function saidFind(
  { stretches, partNodeId }: Pick<EntryOf<'finding'>, 'stretches' | 'partNodeId'>,
  view: Pick<FindView, 'open' | 'say' | 'where'>,
): string {
  if (!partNodeId) return saidStretches(stretches, view);
  return closeWords.found.inPart(view.say(nameOf(view.open.map, partNodeId)));
}

/** Where stretches lie, as a person with a tape says it; the run's name where they are off the circuit. */
export function saidStretches(
  stretches: readonly Stretch[],
  { open, say, where }: Pick<FindView, 'open' | 'say' | 'where'>,
): string {
  const { line, map } = open;
  const ranges = line ? joinRanges(stretches.flatMap((stretch) => circuitRanges(line, stretch))) : [];
  return ranges.length > 0
    ? ranges.map((range) => whereLine(where(range))).join('; ')
    : stretches.map(({ segmentId }) => say(nameOf(map, segmentId))).join(', ');
}
