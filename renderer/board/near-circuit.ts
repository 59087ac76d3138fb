import type { PlanPoint } from '#core/geometry/place.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import type { Lit } from './lit.ts';
import { nearestOnLine } from './nearest-on-line.ts';
import { runLine } from './run-line.ts';

/** Rub spots farther off than this have nothing to do with the circuit. */
const nearMm = 150;
const kept = new WeakMap<Lit['circuitSegments'], { map: MapDocument; ids: ReadonlySet<string> }>();

/** The rub spots beside the traced circuit; worked out once for each circuit and map. */
export function rubSpotsNearCircuit(map: MapDocument, lit: Lit): ReadonlySet<string> {
  const known = kept.get(lit.circuitSegments);
  if (known?.map === map) return known.ids;
  const lines = [...lit.circuitSegments].flatMap((id) => {
    const segment = map.segments.get(id);
    const line = segment && runLine(map, segment);
    return line ? [line.points] : [];
  });
  const near = (point: PlanPoint): boolean =>
    lines.some((line) => nearestOnLine(line, point).distanceMm <= nearMm);
  const ids = new Set<string>();
  for (const spot of map.rubSpots.values()) if (spot.points.some(near)) ids.add(spot.id);
  kept.set(lit.circuitSegments, { map, ids });
  return ids;
}
