import type { JobEntry } from '#core/job/job-document.ts';
import { joinRanges } from '#core/locate/station-ranges.ts';
import { closeWords } from '../../language/close.ts';
import { findWords } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { whereLine } from '../../language/say-where.ts';
import { wishWords } from '../../language/wishes.ts';
import { cautionWords, inspectionWords } from '../../language/words.ts';
import { circuitRanges } from '../../session/stretches-between.ts';
import type { FindView } from './find-context.ts';
import { nearestLookQuality } from './look-quality.ts';
import { readingLine } from './readings/reading-line.ts';

const words = findWords.record;
const wishes = wishWords.record;

/** One entry as a line of words. */
export function entryLine(entry: JobEntry, view: Pick<FindView, 'open' | 'say' | 'where'>): string {
  const { map, line } = view.open;
  switch (entry.type) {
    case 'panel-off':
      return words.panelOff(view.say(nameOf(map, entry.panelId)));
    case 'panel-on':
      return words.panelOn(view.say(nameOf(map, entry.panelId)));
    case 'note':
      return entry.text;
    case 'reading':
      return readingLine(entry, view);
    case 'take-back':
      return words.takeBack;
    case 'inspection': {
      const ranges = line
        ? joinRanges(entry.stretches.flatMap((stretch) => circuitRanges(line, stretch)))
        : [];
      const where = entry.partNodeId
        ? closeWords.found.inPart(view.say(nameOf(map, entry.partNodeId)))
        : ranges.length > 0
          ? ranges.map((range) => whereLine(view.where(range))).join('; ')
          : entry.stretches.map((stretch) => view.say(nameOf(map, stretch.segmentId))).join(', ');
      const quality = findWords.verdict[nearestLookQuality(entry.lookQuality)].toLowerCase();
      return words.looked(inspectionWords[entry.result], `${where} (${quality})`);
    }
    case 'panel-wish':
      return wishes.panel(entry.wish, view.say(nameOf(map, entry.panelId)));
    case 'either-panel': {
      const [one, other] = entry.panelIds.map((id) => view.say(nameOf(map, id))) as [string, string];
      return entry.either ? wishes.either(one, other) : wishes.notEither(one, other);
    }
    case 'time-box':
      return entry.minutes === null ? wishes.noLimit : wishes.time(entry.minutes);
    case 'past-jobs':
      return entry.use ? wishes.pastOn : wishes.pastOff;
    case 'caution-read': {
      const read = [
        ...entry.cautions.map((caution) => cautionWords[caution]),
        ...(entry.tests ?? []).map((test) => words.testCautions[test]),
      ];
      return `${words.closing['caution-read']}: ${read.join(', ')}`;
    }
    default: {
      const note = 'note' in entry ? entry.note : '';
      return note === '' ? words.closing[entry.type] : `${words.closing[entry.type]}: ${note}`;
    }
  }
}
