import type { BodyPoint } from '#core/geometry/place.ts';
import type { MapDocument } from '#core/map/map-document.ts';

/** From where a person measures on the car: its front and its centre line, as drawn. */
export interface BodyFrame {
  readonly frontXMm: number;
  readonly centreYMm: number;
  /** False where no body shell is drawn and the drawing's own zero stands for the front. */
  readonly byShell: boolean;
}

/** A place as measured on the car, in mm. */
export interface Measured {
  /** Back from the front. */
  readonly backMm: number;
  /** Right of the centre line; left is below zero. */
  readonly rightMm: number;
  readonly heightMm: number;
}

/** The front of the foremost body shell and the map's centre line. */
export function bodyFrame(map: MapDocument): BodyFrame {
  let frontXMm = Number.POSITIVE_INFINITY;
  for (const outline of map.outlines.values()) {
    if (outline.kind !== 'shell') continue;
    for (const { xMm } of outline.vertices) frontXMm = Math.min(frontXMm, xMm);
  }
  const byShell = Number.isFinite(frontXMm);
  return { frontXMm: byShell ? frontXMm : 0, centreYMm: map.details.centreLineYMm, byShell };
}

/** Where a measured place lies on the drawing. */
export function placeOf({ frontXMm, centreYMm }: BodyFrame, measured: Measured): BodyPoint {
  return {
    xMm: frontXMm + measured.backMm,
    yMm: centreYMm + measured.rightMm,
    zMm: measured.heightMm,
  };
}

export const atZero: Measured = { backMm: 0, rightMm: 0, heightMm: 0 };
