import { nearestBodyStation } from '#core/geometry/nearest-station.ts';
import type { StationLine } from '#core/geometry/station-line.ts';
import type { HeightAt } from '#core/map/commands/set-heights.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Segment } from '#core/map/records.ts';
import { runLine } from '../../../board/run-line.ts';

/** A point of a run whose height can be set: an end or a bend. */
export interface ProfilePoint {
  readonly key: string;
  readonly at: HeightAt['at'];
  readonly stationMm: number;
  readonly zMm: number;
}

/** A run seen from the side. */
export interface RunProfile {
  readonly line: StationLine;
  readonly points: readonly ProfilePoint[];
}

/** A run's points in order along it; null for a run half drawn. A rounded bend stands where the line passes nearest. */
export function runProfile(map: MapDocument, segment: Segment): RunProfile | null {
  const line = runLine(map, segment);
  const from = map.nodes.get(segment.fromNodeId);
  const to = map.nodes.get(segment.toNodeId);
  if (!line || !from || !to) return null;
  let stationMm = 0;
  const bends = segment.bends.map((bend, index): ProfilePoint => {
    stationMm = segment.smooth
      ? nearestBodyStation(line, bend, stationMm).stationMm
      : (line.stationsMm[index + 1] as number);
    return { key: `bend${index}`, at: { bend: index }, stationMm, zMm: bend.zMm };
  });
  return {
    line,
    points: [
      { key: 'from', at: 'from', stationMm: 0, zMm: from.at.zMm },
      ...bends,
      { key: 'to', at: 'to', stationMm: line.lengthMm, zMm: to.at.zMm },
    ],
  };
}
