import type { PlanPoint } from '#core/geometry/place.ts';
import { placeUnderlay } from '#core/map/commands/place-underlay.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Patch } from '#core/map/patch.ts';
import type { Underlay } from '#core/map/records.ts';
import { planToPixel } from '#core/map/underlay-place.ts';
import type { Result } from '#core/quantity/result.ts';

/** How the second place lies from the first: as the picture shows it, straight rearward, or straight across. */
export type Lie = 'drawn' | 'along' | 'across';

/** What is known of two places in a picture. */
export type KnownPlaces =
  | { readonly how: 'distance'; readonly distanceMm: number; readonly lie: Lie }
  | { readonly how: 'places'; readonly from: PlanPoint; readonly to: PlanPoint };

/**
 * Lays a picture so that two places pressed on it come to lie where they truly are. With only a distance
 * known the first place stays where it is.
 */
export function placedPicture(
  map: MapDocument,
  underlay: Underlay,
  pressed: { readonly from: PlanPoint; readonly to: PlanPoint },
  known: KnownPlaces,
): Result<Patch> {
  const { from, to } = pressed;
  const body: readonly [PlanPoint, PlanPoint] =
    known.how === 'places' ? [known.from, known.to] : [from, atDistance(from, to, known)];
  return placeUnderlay(map, {
    underlayId: underlay.id,
    picture: [planToPixel(underlay, from), planToPixel(underlay, to)],
    body,
  });
}

function atDistance(
  from: PlanPoint,
  to: PlanPoint,
  { distanceMm, lie }: { readonly distanceMm: number; readonly lie: Lie },
): PlanPoint {
  const dx = to.xMm - from.xMm;
  const dy = to.yMm - from.yMm;
  const drawnMm = Math.hypot(dx, dy) || 1;
  // The sense is kept: what was pressed behind the first place stays behind it.
  const [alongX, alongY] =
    lie === 'along'
      ? [Math.sign(dx) || 1, 0]
      : lie === 'across'
        ? [0, Math.sign(dy) || 1]
        : [dx / drawnMm, dy / drawnMm];
  return { xMm: from.xMm + alongX * distanceMm, yMm: from.yMm + alongY * distanceMm };
}
