import { createContext, useContext } from 'react';
import type { JobEntry } from '#core/job/job-document.ts';
import type { Caution } from '#core/map/kinds.ts';
import { assert } from '#core/quantity/assert.ts';
import type { EntryId } from '#core/quantity/id.ts';
import type { LengthSystem } from '../../language/say-length.ts';
import type { SaidPlace } from '../../language/say-where.ts';
import type { JobOpen, JobSession } from '../../session/job-session.ts';
import type { Piece } from '../../straight/straight-picture.ts';
import type { ReadingForm } from './readings/reading-form.ts';

/** A reading to be written down. */
export interface ReadingStart {
  /** Another for each start, so that a form begins anew. */
  readonly key: number;
  readonly forms: readonly ReadingForm[];
  /** The entry it puts right. */
  readonly replaces: EntryId | null;
}

/** What every part of the Find place needs to know and may do. */
export interface FindView {
  readonly session: JobSession;
  readonly open: JobOpen;
  readonly standing: readonly JobEntry[];
  readonly lengths: LengthSystem;
  /** A name with its sides as the user wants them said. */
  readonly say: (name: string) => string;
  readonly where: (piece: Piece) => SaidPlace;
  /** What is pointed at in any of the three views. */
  readonly pointed: readonly Piece[];
  /** The reading whose pieces they are, when it is a reading. */
  readonly pointedEntry: EntryId | null;
  readonly point: (pieces: readonly Piece[], entryId?: EntryId) => void;
  readonly picked: Piece | null;
  readonly pick: (piece: Piece | null) => void;
  /** Cautions read and understood in this job. */
  readonly cautionsRead: ReadonlySet<Caution>;
  /** The reading being written down; null when none is. */
  readonly reading: ReadingStart | null;
  /** Starts writing one down: with no form an empty one, with several one after the other. */
  readonly openReading: (forms: readonly ReadingForm[], replaces: EntryId | null) => void;
  readonly closeReading: () => void;
}

export const FindContext = createContext<FindView | null>(null);

/** The view of the place this part is in. */
export function useFind(): FindView {
  const view = useContext(FindContext);
  assert(view, 'parts of the Find place are drawn inside it');
  return view;
}
