import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import { nearestLandmark } from '#core/circuit/landmark.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { NodeId } from '#core/quantity/id.ts';
import type { Piece } from '../../straight/straight-picture.ts';

/** Half of what a measured place covers: no tape along a loom is better than a centimetre. */
const halfMm = 10;

/** The landmark a place within a piece is measured from, and how far off the place may be. */
export function distanceBounds(
  map: MapDocument,
  line: CircuitLine,
  piece: Piece,
): { readonly nodeId: NodeId; readonly leastMm: number; readonly mostMm: number } {
  const landmark = nearestLandmark(map, line, piece.fromMm, piece.toMm);
  const across = landmark.lies === 'across';
  return {
    nodeId: landmark.nodeId,
    leastMm: across ? -landmark.nearMm : landmark.nearMm,
    mostMm: landmark.farMm,
  };
}

/** The short piece at a distance from the landmark of a longer one, kept within the longer one. */
export function pieceAtDistance(
  map: MapDocument,
  line: CircuitLine,
  piece: Piece,
  distanceMm: number,
): Piece {
  const landmark = nearestLandmark(map, line, piece.fromMm, piece.toMm);
  const stationMm =
    landmark.lies === 'towards-first-end'
      ? piece.toMm + landmark.nearMm - distanceMm
      : landmark.lies === 'across'
        ? piece.fromMm + landmark.nearMm + distanceMm
        : piece.fromMm - landmark.nearMm + distanceMm;
  const middle = Math.min(piece.toMm - halfMm, Math.max(piece.fromMm + halfMm, stationMm));
  return { fromMm: middle - halfMm, toMm: middle + halfMm };
}
