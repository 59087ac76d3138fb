import { createStore } from 'zustand/vanilla';
import type { SegmentId } from '#core/quantity/id.ts';

/** A place on a run that was pressed on the board or chosen beside it. */
export interface PlaceHere {
  readonly segmentId: SegmentId;
  readonly stationMm: number;
}

/** The place looked at: passing, never saved, the same for the board and the details beside it. */
export const placeHere = createStore<{ readonly place: PlaceHere | null }>(() => ({ place: null }));
