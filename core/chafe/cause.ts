/**
 * What can make a place on the wire fail. `anywhere` is the even floor that stands for what nobody
 * mapped; `joint` is the metal inside a splice or an earth point on the way, or in a plug looked into.
 */
export const causeKinds = [
  'rub-spot',
  'bare-body',
  'clip-edge',
  'pass-through',
  'tight-bend',
  'hinge-flex',
  'seat-slide',
  'foot-load',
  'wet',
  'joint',
  'anywhere',
] as const;
export type CauseKind = (typeof causeKinds)[number];

/**
 * The figures a sentence about a cause may need. Only those that apply are present.
 */
export interface CauseFigures {
  /** Clip to clip distance of the span the place lies in. */
  readonly spanMm?: number;
  /** The span is longer than the run it is told of: it goes on to the next hold past an end. */
  readonly beyondRun?: true;
  /** Instead of a span: how far the loom goes on past its last hold to an end that nothing holds. */
  readonly freeMm?: number;
  /** Instead of a span: nothing holds the loom on either side. */
  readonly unheld?: true;
  /** How far the span hangs below its clips at mid-span, slack included. */
  readonly sagMm?: number;
  /** Free gap between loom surface and what it may rub on. */
  readonly clearanceMm?: number;
  readonly bendRadiusMm?: number;
  readonly bundleDiameterMm?: number;
  readonly covering?: string;
  readonly rubSpotKind?: string;
  readonly missingClips?: number;
  readonly timesFound?: number;
}

/** One cause of hazard on a stretch and its share (0 to 1) of that stretch's hazard. */
export interface CauseShare {
  readonly cause: CauseKind;
  /** Record the cause belongs to (rub spot, node, clip, run), when there is one. */
  readonly thing: string | null;
  readonly share: number;
  readonly figures: CauseFigures;
}
