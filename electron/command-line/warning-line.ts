import type { RankWarning } from '#core/job/ranking.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { findWords, warningSentence } from '#renderer/language/find.ts';
import { problemSentence } from '#renderer/language/problems.ts';
import { sayStretch } from '#renderer/language/say-length.ts';
import { nameAndId, nameOf } from './name-of.ts';

/** A warning as one line; what the screen shows as a banner is said in full here. */
export function warningLine(map: MapDocument, warning: RankWarning): string {
  if (warning.code === 'restraint-circuit') return findWords.restraint.words;
  if (warning.code === 'high-voltage-circuit') return findWords.highVoltage.words;
  if (warning.code === 'entry-ignored') {
    return problemSentence(warning.problem, (id) => nameAndId(map, id)).message;
  }
  const piece = (fromMm: number, toMm: number): string => {
    const { near, far, unit } = sayStretch(fromMm, toMm, 'metric');
    return `${near} to ${far} ${unit}`;
  };
  return warningSentence(warning, (id) => nameOf(map, id), piece) ?? warning.code;
}
