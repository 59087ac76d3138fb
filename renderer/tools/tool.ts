import type { PlanPoint } from '#core/geometry/place.ts';
import type { ClipKind, NodeKind, OutlineKind, RubSpotKind } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { RubSpot } from '#core/map/records.ts';
import type { Selection } from '#core/map/transaction.ts';
import type { Chance } from '#core/quantity/chance.ts';
import type { CircuitId, NodeId, PanelId, SegmentId } from '#core/quantity/id.ts';
import type { Result } from '#core/quantity/result.ts';
import type { BoardIndex } from '../board/board-index.ts';
import type { Hit } from '../board/hit.ts';
import type { Overlay } from '../board/overlay.ts';
import type { MachineSettings } from '../session/machine-settings.ts';

/** What is chosen beside the rail for the things about to be drawn. */
export interface ToolChoices {
  readonly outlineKind: OutlineKind;
  readonly nodeKind: NodeKind;
  readonly clipKind: ClipKind;
  readonly rubSpotShape: RubSpot['shape'];
  readonly rubSpotKind: RubSpotKind;
  /** Points take hold of corners and edges of outlines and panels. */
  readonly snapping: boolean;
  /** Points go to the lines of the grid where nothing else takes hold. */
  readonly grid: boolean;
  /** Outlines, panels and rub spots are drawn on the other side of the centre line too. */
  readonly mirror: boolean;
  /** Bends of the routes about to be drawn are rounded. */
  readonly smooth: boolean;
  /** The panel that is painted over runs. */
  readonly paintPanelId: PanelId | null;
}

/** What a person wants of the way of one circuit, beyond the shortest; kept while the place is open. */
export interface TraceChoice {
  readonly circuitId: CircuitId;
  /** Nodes to pass, in this order. */
  readonly via: readonly NodeId[];
  readonly avoid: readonly SegmentId[];
}

/** What a drawing action may look at. It is read afresh at every event. */
export interface ToolView {
  readonly map: MapDocument;
  /** Of what may be picked: neither hidden nor locked. */
  readonly index: BoardIndex;
  readonly selection: Selection;
  readonly traceChoice: TraceChoice | null;
  readonly pxPerMm: number;
  readonly choices: ToolChoices;
  readonly lengths: MachineSettings['lengths'];
  readonly chance: Chance;
}

export interface PointerInput {
  readonly type: 'down' | 'move' | 'up' | 'double';
  readonly at: PlanPoint;
  /** What lies under the pointer, best first. */
  readonly hits: readonly Hit[];
  readonly reachMm: number;
  readonly shift: boolean;
  readonly alt: boolean;
}

export type ToolEvent =
  | PointerInput
  | { readonly type: 'key'; readonly key: 'Enter' | 'Escape' | 'Backspace' | 'Delete' };

/** What a drawing action wants done; the place does it. */
export type ToolEffect =
  | {
      readonly type: 'edit';
      readonly label: string;
      readonly patch: Result<Patch>;
      readonly select?: Selection;
    }
  | { readonly type: 'preview'; readonly patch: Patch | null }
  | { readonly type: 'trace'; readonly choice: TraceChoice }
  | { readonly type: 'select'; readonly ids: Selection }
  | { readonly type: 'remove'; readonly ids: Selection };

export interface ToolStep<S> {
  readonly state: S;
  readonly effects: readonly ToolEffect[];
}

/** One drawing action: a pure machine over its own small state. */
export interface Tool<S> {
  readonly start: S;
  readonly step: (state: S, event: ToolEvent, view: ToolView) => ToolStep<S>;
  readonly overlay: (state: S, view: ToolView) => Overlay;
}

/** A step that only changes the state. */
export const stay = <S>(state: S): ToolStep<S> => ({ state, effects: [] });
