import { evidenceEntries } from '#core/job/evidence-entries.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import type { ReadingEffect } from '#core/job/ranking.ts';
import type { Piece } from '../../../straight/straight-picture.ts';
import type { ReadingEntry } from './reading-form.ts';

/** A standing reading and the number it goes by on the screen. */
export interface NumberedReading {
  readonly number: number;
  readonly entry: ReadingEntry;
}

/**
 * The standing readings in the order of the record, numbered from 1; with them what was read when a repair was
 * tried, once the search went on after it.
 */
export function numberedReadings(standing: readonly JobEntry[]): readonly NumberedReading[] {
  const counted = new Map(
    evidenceEntries(standing).flatMap((entry) =>
      entry.type === 'reading' ? [[entry.id, entry] as const] : [],
    ),
  );
  return standing
    .flatMap((entry) => (entry.type === 'reading' ? [entry] : (counted.get(entry.id) ?? [])))
    .map((entry, index) => ({ number: index + 1, entry }));
}

/** The pieces a reading alone points at; none where it points nowhere. */
export function effectRanges(effect: ReadingEffect): readonly Piece[] {
  return effect.unused !== null || effect.interval === 'everywhere' ? [] : effect.interval;
}
