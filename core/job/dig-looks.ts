import {
  type Look,
  leastReturn,
  lookMinutes,
  plugLookMinutes,
  plugLookQuality,
  usualLookQuality,
} from '../dig/look.ts';
import { type Cumulative, probabilityWithin } from '../locate/cumulative.ts';
import type { ComponentHypothesis } from '../locate/hypotheses.ts';
import type { StationRange } from '../locate/station-ranges.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { NodeId, SegmentId } from '../quantity/id.ts';
import type { PathStretch } from './path-stretches.ts';
import type { Posterior } from './ranking.ts';

/** A look of the plan and the place it belongs to. */
export interface PlacedLook extends Look, StationRange {
  readonly segmentId: SegmentId;
  /** Set when the look is into a plug. */
  readonly nodeId: NodeId | null;
}

/** A longer stretch is looked at in pieces, so that its likely part may come before the rest. */
const longestLookMm = 600;

/**
 * The places a search of the circuit can look at: its stretches in pieces of 600 mm at most, and the
 * plugs on the way. Faulty end parts are not found by looking and have no look.
 * @example
 * digLooks(sample.map, [], { components: [] }, cumulate(new Float64Array([0, 1]), new Float64Array([1])), []) // => []
 */
export function digLooks(
  map: MapDocument,
  stretches: readonly PathStretch[],
  posterior: Pick<Posterior, 'components'>,
  curve: Cumulative,
  parts: readonly ComponentHypothesis[],
  lookQuality: number = usualLookQuality,
): PlacedLook[] {
  const looks = stretches.flatMap((stretch) => lookPieces(stretch, curve, lookQuality));
  parts.forEach((part, i) => {
    const node = map.nodes.get(part.nodeId);
    const beside = stretches.find((stretch) => stretch.toMm >= part.stationMm);
    if (part.place !== 'plug' || !node || !beside) return;
    const probability = posterior.components[i]?.probability ?? 0;
    looks.push({
      id: part.nodeId,
      panelIds: node.panelIds,
      probability,
      quality: plugLookQuality,
      once: isOnce(probability, plugLookQuality),
      minutes: plugLookMinutes,
      segmentId: beside.segmentId,
      fromMm: part.stationMm,
      toMm: part.stationMm,
      nodeId: part.nodeId,
    });
  });
  return looks;
}

function lookPieces(stretch: PathStretch, curve: Cumulative, quality: number): PlacedLook[] {
  const lengthMm = stretch.toMm - stretch.fromMm;
  const pieces = Math.max(1, Math.ceil(lengthMm / longestLookMm - 1e-9));
  return Array.from({ length: pieces }, (_, i) => {
    const fromMm = stretch.fromMm + (lengthMm * i) / pieces;
    const toMm = i === pieces - 1 ? stretch.toMm : stretch.fromMm + (lengthMm * (i + 1)) / pieces;
    const probability = probabilityWithin(curve, { fromMm, toMm });
    return {
      id: `${stretch.segmentId} ${String(Math.round(fromMm)).padStart(8, '0')}`,
      panelIds: stretch.panelIds,
      probability,
      quality,
      once: isOnce(probability, quality),
      minutes: lookMinutes(toMm - fromMm),
      segmentId: stretch.segmentId,
      fromMm,
      toMm,
      nodeId: null,
    };
  });
}

function isOnce(probability: number, quality: number): boolean {
  return probability * quality * (1 - quality) < leastReturn;
}
