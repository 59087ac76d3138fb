import type { BodyPoint } from '../geometry/place.ts';
import type { StationLine } from '../geometry/station-line.ts';

/** Places at even steps along a run, ends included. */
export interface RunPlaces {
  readonly xMm: Float64Array;
  readonly yMm: Float64Array;
  readonly zMm: Float64Array;
}

const room = {
  line: null as StationLine | null,
  steps: 0,
  xMm: new Float64Array(0),
  yMm: new Float64Array(0),
  zMm: new Float64Array(0),
};

/**
 * Where a run lies at even steps, from its start to its end: steps + 1 places. They stay as they are until
 * those of another run are asked for. O(steps + points) the first time.
 * @example
 * placesAlong(sample.line.spans[0].line, 5).xMm.slice(0, 6) // => [0, 100, 200, 300, 400, 500]
 */
export function placesAlong(line: StationLine, steps: number): RunPlaces {
  if (room.line === line && room.steps === steps) return room;
  room.line = line;
  room.steps = steps;
  if (room.xMm.length <= steps) {
    room.xMm = new Float64Array(2 * steps + 1);
    room.yMm = new Float64Array(2 * steps + 1);
    room.zMm = new Float64Array(2 * steps + 1);
  }
  const { points, stationsMm, lengthMm } = line;
  const { xMm, yMm, zMm } = room;
  const stepMm = lengthMm / steps;
  let step = 0;
  for (let i = 1; i < points.length && step <= steps; i++) {
    const a = points[i - 1] as BodyPoint;
    const b = points[i] as BodyPoint;
    const startMm = stationsMm[i - 1] as number;
    const pieceMm = (stationsMm[i] as number) - startMm;
    const lastStep = i === points.length - 1 ? steps : Math.floor((startMm + pieceMm) / stepMm);
    const perMm = pieceMm > 0 ? 1 / pieceMm : 0;
    for (; step <= lastStep && step <= steps; step++) {
      const share = Math.min(1, (step * stepMm - startMm) * perMm);
      xMm[step] = a.xMm + (b.xMm - a.xMm) * share;
      yMm[step] = a.yMm + (b.yMm - a.yMm) * share;
      zMm[step] = a.zMm + (b.zMm - a.zMm) * share;
    }
  }
  return room;
}
