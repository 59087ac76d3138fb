import type { PanelId, SegmentId } from '#core/quantity/id.ts';

/** A stretch of a run in the light of likelihood. Stations are drawn ones, from the run's first node. */
export interface LitStretch {
  readonly fromMm: number;
  readonly toMm: number;
  /** 0 (least likely) to 1 (most likely): picks the tone and the stroke width. */
  readonly level: number;
  /** Place in the dig list; shown as a numeral on the stretch. */
  readonly rank?: number;
}

/** What was seen along a run. */
export type LitMark =
  | { readonly kind: 'clean'; readonly segmentId: SegmentId; readonly fromMm: number; readonly toMm: number }
  | {
      readonly kind: 'damaged-not-ours';
      readonly segmentId: SegmentId;
      readonly fromMm: number;
      readonly toMm: number;
    }
  | { readonly kind: 'found'; readonly segmentId: SegmentId; readonly atMm: number };

/** How a job shows on the board: one circuit in light, all else quiet. */
export interface Lit {
  readonly stretches: ReadonlyMap<SegmentId, readonly LitStretch[]>;
  readonly marks: readonly LitMark[];
  readonly panelsOff: ReadonlySet<PanelId>;
  /** The traced circuit's runs; everything else is drawn quiet. */
  readonly circuitSegments: ReadonlySet<SegmentId>;
  /** Stretches the user points at here or in another view. */
  readonly pointed: readonly {
    readonly segmentId: SegmentId;
    readonly fromMm: number;
    readonly toMm: number;
  }[];
}
