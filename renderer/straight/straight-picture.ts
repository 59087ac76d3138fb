import { allNodes, type CircuitLine, circuitStationMm } from '#core/circuit/circuit-line.ts';
import { nearestBodyStation } from '#core/geometry/nearest-station.ts';
import type { InspectionResult, JobEntry } from '#core/job/job-document.ts';
import type { StretchProbability } from '#core/job/ranking.ts';
import { panelsOff } from '#core/job/standing-entries.ts';
import type { ClipKind, NodeKind, RubSpotKind } from '#core/map/kinds.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { ClipId, NodeId, PanelId, RubSpotId } from '#core/quantity/id.ts';
import { circuitRanges } from '../session/stretches-between.ts';

/** A piece of the circuit, in mm of wire from its first end. */
export interface Piece {
  readonly fromMm: number;
  readonly toMm: number;
}

/** Everything on the circuit's own ruler, ready to be drawn at any scale. */
export interface StraightPicture {
  readonly lengthMm: number;
  readonly nodes: readonly {
    readonly nodeId: NodeId;
    readonly kind: NodeKind;
    readonly name: string;
    readonly stationMm: number;
  }[];
  readonly clips: readonly {
    readonly clipId: ClipId;
    readonly kind: ClipKind;
    readonly missing: boolean;
    readonly stationMm: number;
  }[];
  readonly rubSpots: readonly {
    readonly rubSpotId: RubSpotId;
    readonly kind: RubSpotKind;
    readonly name: string;
    readonly severity: 1 | 2 | 3;
    readonly stationMm: number;
  }[];
  /** Panels that hide pieces, each on a lane where it crosses no other. */
  readonly bands: readonly (Piece & {
    readonly panelId: PanelId;
    readonly name: string;
    readonly off: boolean;
    readonly confirmed: boolean;
    readonly lane: number;
  })[];
  readonly laneCount: number;
  readonly seen: readonly (Piece & { readonly result: InspectionResult })[];
}

/** A rub spot farther from the loom than this is drawn on the board only. */
const rubReachMm = 120;

/** Joins pieces of one panel that touch, so that a panel over two runs is one band. */
const touchMm = 1;

/** Lays map, panels and what was seen on the circuit's ruler. O(things on the circuit x rub spots). */
export function straightPicture(
  map: MapDocument,
  line: CircuitLine,
  standing: readonly JobEntry[],
): StraightPicture {
  const bands = placeLanes(panelBands(map, line, panelsOff(standing)));
  return {
    lengthMm: line.lengthMm,
    nodes: allNodes(line).flatMap(({ nodeId, stationMm }) => {
      const node = map.nodes.get(nodeId);
      return node ? [{ nodeId, stationMm, kind: node.kind, name: node.name }] : [];
    }),
    clips: line.spans.flatMap((span) =>
      span.segment.clips
        .filter((clip) => clip.stationMm <= span.line.lengthMm)
        .map((clip) => ({
          clipId: clip.id,
          kind: clip.kind,
          missing: clip.missing,
          stationMm: circuitStationMm(span, clip.stationMm),
        })),
    ),
    rubSpots: rubSpotsBeside(map, line),
    bands,
    laneCount: bands.reduce((most, band) => Math.max(most, band.lane + 1), 0),
    seen: standing.flatMap((entry) =>
      entry.type === 'inspection'
        ? entry.stretches.flatMap((stretch) =>
            circuitRanges(line, stretch).map((range) => ({ ...range, result: entry.result })),
          )
        : [],
    ),
  };
}

function rubSpotsBeside(map: MapDocument, line: CircuitLine): StraightPicture['rubSpots'] {
  const beside: StraightPicture['rubSpots'][number][] = [];
  for (const spot of map.rubSpots.values()) {
    let nearestMm = rubReachMm;
    let stationMm: number | null = null;
    for (const span of line.spans) {
      for (const point of spot.points) {
        const near = nearestBodyStation(span.line, point);
        if (near.distanceMm > nearestMm) continue;
        nearestMm = near.distanceMm;
        stationMm = circuitStationMm(span, near.stationMm);
      }
    }
    if (stationMm === null) continue;
    const { id, kind, name, severity } = spot;
    beside.push({ rubSpotId: id, kind, name, severity, stationMm });
  }
  return beside.sort((a, b) => a.stationMm - b.stationMm);
}

type Band = Omit<StraightPicture['bands'][number], 'lane'>;

function panelBands(map: MapDocument, line: CircuitLine, off: ReadonlySet<PanelId>): readonly Band[] {
  const open = new Map<PanelId, Band>();
  const bands: Band[] = [];
  for (const span of line.spans) {
    for (const tag of span.segment.tags) {
      const panel = map.panels.get(tag.panelId);
      if (!panel) continue;
      const a = circuitStationMm(span, Math.min(tag.fromMm, span.line.lengthMm));
      const b = circuitStationMm(span, Math.min(tag.toMm, span.line.lengthMm));
      const piece = { fromMm: Math.min(a, b), toMm: Math.max(a, b) };
      const before = open.get(panel.id);
      if (before && piece.fromMm - before.toMm <= touchMm) {
        const longer = {
          ...before,
          toMm: Math.max(before.toMm, piece.toMm),
          confirmed: before.confirmed && tag.confirmed,
        };
        bands[bands.indexOf(before)] = longer;
        open.set(panel.id, longer);
      } else {
        const band = {
          ...piece,
          panelId: panel.id,
          name: panel.name,
          off: off.has(panel.id),
          confirmed: tag.confirmed,
        };
        bands.push(band);
        open.set(panel.id, band);
      }
    }
  }
  return bands;
}

function placeLanes(bands: readonly Band[]): StraightPicture['bands'] {
  const laneEndMm: number[] = [];
  return [...bands]
    .sort((a, b) => a.fromMm - b.fromMm || b.toMm - a.toMm || (a.panelId < b.panelId ? -1 : 1))
    .map((band) => {
      const free = laneEndMm.findIndex((end) => end <= band.fromMm + touchMm);
      const lane = free < 0 ? laneEndMm.length : free;
      laneEndMm[lane] = band.toMm;
      return { ...band, lane };
    });
}

/** The ranking's stretch that holds a station; null off the ends or where nothing is ranked. */
export function stretchAt(
  stretches: readonly StretchProbability[],
  stationMm: number,
): StretchProbability | null {
  return stretches.find((each) => stationMm >= each.fromMm && stationMm < each.toMm) ?? null;
}
