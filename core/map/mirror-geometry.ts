import type { PlanPoint } from '../geometry/place.ts';
import type { Vertex } from './records.ts';

/**
 * A place mirrored about the car's centre line; x and height stay.
 * @example
 * mirroredPoint({ xMm: 100, yMm: 30 }, 10) // => { xMm: 100, yMm: -10 }
 */
export function mirroredPoint<P extends PlanPoint>(point: P, centreLineYMm: number): P {
  return { ...point, yMm: 2 * centreLineYMm - point.yMm };
}

/**
 * An outline corner mirrored about the centre line, handles included.
 * @example
 * mirroredVertex({ xMm: 0, yMm: 5, handleOut: { dxMm: 1, dyMm: 2 } }, 0) // => { xMm: 0, yMm: -5, handleOut: { dxMm: 1, dyMm: -2 } }
 */
export function mirroredVertex(vertex: Vertex, centreLineYMm: number): Vertex {
  const { handleIn, handleOut, ...point } = vertex;
  return {
    ...mirroredPoint(point, centreLineYMm),
    ...(handleIn ? { handleIn: { dxMm: handleIn.dxMm, dyMm: 0 - handleIn.dyMm } } : {}),
    ...(handleOut ? { handleOut: { dxMm: handleOut.dxMm, dyMm: 0 - handleOut.dyMm } } : {}),
  };
}
