import type {
  CircuitId,
  MapId,
  NodeId,
  OutlineId,
  PanelId,
  RubSpotId,
  SegmentId,
  UnderlayId,
} from '../quantity/id.ts';
import type { BodyStyle, DriveSide } from './kinds.ts';
import type { Circuit, MapDetails, MapNode, Outline, Panel, RubSpot, Segment, Underlay } from './records.ts';

/** One vehicle map in memory: immutable tables of whole small records. */
export interface MapDocument {
  readonly id: MapId;
  readonly revision: number;
  readonly details: MapDetails;
  readonly outlines: ReadonlyMap<OutlineId, Outline>;
  readonly underlays: ReadonlyMap<UnderlayId, Underlay>;
  readonly nodes: ReadonlyMap<NodeId, MapNode>;
  readonly segments: ReadonlyMap<SegmentId, Segment>;
  readonly panels: ReadonlyMap<PanelId, Panel>;
  readonly rubSpots: ReadonlyMap<RubSpotId, RubSpot>;
  readonly circuits: ReadonlyMap<CircuitId, Circuit>;
}

/** Any record a patch can add, remove or change. */
export type MapRecord = MapDetails | Outline | Underlay | MapNode | Segment | Panel | RubSpot | Circuit;

/** The tables of a map by the word before the colon in their records' ids. */
export const tableOfKind = {
  outline: 'outlines',
  underlay: 'underlays',
  node: 'nodes',
  segment: 'segments',
  panel: 'panels',
  'rub-spot': 'rubSpots',
  circuit: 'circuits',
} as const;
export type TableKind = keyof typeof tableOfKind;
export type TableName = (typeof tableOfKind)[TableKind];

/**
 * A map with nothing drawn yet.
 * @example
 * emptyMap('map:new', 'Hatch', 'hatch', 'right').segments.size // => 0
 */
export function emptyMap(id: MapId, name: string, bodyStyle: BodyStyle, driveSide: DriveSide): MapDocument {
  return {
    id,
    revision: 0,
    details: {
      id: 'details:map',
      name,
      bodyStyle,
      driveSide,
      scale: null,
      centreLineYMm: 0,
      note: '',
    },
    outlines: new Map(),
    underlays: new Map(),
    nodes: new Map(),
    segments: new Map(),
    panels: new Map(),
    rubSpots: new Map(),
    circuits: new Map(),
  };
}
