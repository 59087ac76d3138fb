import type { JobEntry } from '#core/job/job-document.ts';
import type { ReadingEffect } from '#core/job/ranking.ts';
import type { Piece } from '../../../straight/straight-picture.ts';
import type { ReadingEntry } from './reading-form.ts';

/** A standing reading and the number it goes by on the screen. */
export interface NumberedReading {
  readonly number: number;
  readonly entry: ReadingEntry;
}

/** The standing readings in the order of the record, numbered from 1. */
export function numberedReadings(standing: readonly JobEntry[]): readonly NumberedReading[] {
  return standing
    .filter((entry) => entry.type === 'reading')
    .map((entry, index) => ({ number: index + 1, entry }));
}

/** The pieces a reading alone points at; none where it points nowhere. */
export function effectRanges(effect: ReadingEffect): readonly Piece[] {
  return effect.unused !== null || effect.interval === 'everywhere' ? [] : effect.interval;
}
