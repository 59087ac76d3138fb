import { boundsOf } from '#core/geometry/bounds.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import type { ComparedThing, MapComparison } from '#core/map/compare-maps.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { idKind } from '#core/quantity/id.ts';
import type { Overlay, OverlayLabel, OverlayLine, OverlayPoint } from '../../../board/overlay.ts';
import { compareWords } from '../../../language/draw-compare.ts';
import { pointsOf } from '../things-bounds.ts';

/** With more words than this on the board they say less than the marks alone. */
const mostLabels = 60;

/** What a comparison shows on the board: each kind of difference by a mark of its own shape, and a word while there is room. */
export function comparisonMarks(
  before: MapDocument,
  after: MapDocument,
  { added, moved, changed, removed }: MapComparison,
): Overlay {
  const lines: OverlayLine[] = [];
  const points: OverlayPoint[] = [];
  const labels: OverlayLabel[] = [];
  const say = (at: PlanPoint, text: string): void => {
    labels.push({ at, text, unit: '' });
  };
  const draw = (map: MapDocument, thing: ComparedThing, style: OverlayLine['style']): PlanPoint | null => {
    if (!isPlaced(thing)) return null;
    const along = pointsOf(map, thing.id);
    if (along.length > 1) lines.push({ points: along, closed: isClosed(map, thing.id), style });
    return middleOf(along);
  };
  for (const thing of removed) {
    const at = draw(before, thing, 'loose');
    if (!at) continue;
    points.push({ at, style: 'placed' });
    say(at, compareWords.marks.removed);
  }
  for (const thing of added) {
    const at = draw(after, thing, 'band');
    if (!at) continue;
    if (idKind(thing.id) === 'node' || idKind(thing.id) === 'rub-spot') points.push({ at, style: 'grip' });
    if (idKind(thing.id) !== 'node') say(at, compareWords.marks.added);
  }
  for (const thing of moved) {
    if (!isPlaced(thing)) continue;
    const from = middleOf(pointsOf(before, thing.id));
    const to = middleOf(pointsOf(after, thing.id));
    if (!from || !to) continue;
    lines.push({ points: [from, to], closed: false, style: 'measure' });
    points.push({ at: from, style: 'placed' }, { at: to, style: 'snap' });
    say(to, compareWords.marks.moved);
  }
  const alsoMoved = new Set(moved.map(({ id }) => id));
  for (const thing of changed) {
    const at = isPlaced(thing) ? middleOf(pointsOf(after, thing.id)) : null;
    if (!at || alsoMoved.has(thing.id)) continue;
    points.push({ at, style: 'snap' });
    say(at, compareWords.marks.changed);
  }
  return { lines, points, labels: labels.length > mostLabels ? [] : labels, box: null };
}

/** A circuit is drawn along runs that have marks of their own; the map itself has no place. */
const isPlaced = (thing: ComparedThing): boolean => thing.kind !== 'details' && thing.kind !== 'circuit';

function isClosed(map: MapDocument, id: string): boolean {
  switch (idKind(id)) {
    case 'panel':
    case 'underlay':
      return true;
    case 'outline':
      return map.outlines.get(id as `outline:${string}`)?.closed ?? false;
    case 'rub-spot':
      return map.rubSpots.get(id as `rub-spot:${string}`)?.shape === 'area';
    default:
      return false;
  }
}

/** The middle of a line along its corners, of an area's rectangle, or the point itself. */
function middleOf(points: readonly PlanPoint[]): PlanPoint | null {
  const box = boundsOf(points);
  return box && { xMm: (box.minXMm + box.maxXMm) / 2, yMm: (box.minYMm + box.maxYMm) / 2 };
}
