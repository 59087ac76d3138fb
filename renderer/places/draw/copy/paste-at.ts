import type { Bounds } from '#core/geometry/bounds.ts';
import type { PlanPoint } from '#core/geometry/place.ts';
import { pasteThings } from '#core/map/commands/paste-things.ts';
import type { CopiedThings } from '#core/map/copied-things.ts';
import type { MapDocument } from '#core/map/map-document.ts';
import { applyPatch, type Patch } from '#core/map/patch.ts';
import type { Segment } from '#core/map/records.ts';
import type { Chance } from '#core/quantity/chance.ts';
import { idKind } from '#core/quantity/id.ts';
import { ok, type Result } from '#core/quantity/result.ts';
import { boundsOfThings } from '../things-bounds.ts';

/** Where copies go: their middle to a place, or beside where they came from, if that is in view at all. */
export type PasteAim =
  | { readonly to: 'place'; readonly at: PlanPoint }
  | { readonly to: 'beside'; readonly view: Bounds | null; readonly times: number };

/** Far enough to see that there are two, near enough to see which. */
const besideMm = 80;

export interface Pasted {
  readonly patch: Patch;
  /** What to pick afterwards: the copies, without the ends that their runs brought along. */
  readonly ids: readonly string[];
}

/** Lays copies on a map. Problems are those of `pasteThings`. */
export function pasteAt(
  map: MapDocument,
  things: CopiedThings,
  aim: PasteAim,
  chance: Chance,
): Result<Pasted> {
  const inPlace = pasteThings(map, { things, dxMm: 0, dyMm: 0 }, chance);
  if (!inPlace.ok) return inPlace;
  const there = applyPatch(map, inPlace.value);
  if (!there.ok) return there;
  const box = boundsOfThings(
    there.value,
    inPlace.value.added.map((record) => record.id),
  );
  if (!box) return ok({ patch: inPlace.value, ids: picksOf(inPlace.value) });
  const moved = pasteThings(map, { things, ...shiftTo(box, aim) }, chance);
  return moved.ok ? ok({ patch: moved.value, ids: picksOf(moved.value) }) : moved;
}

function shiftTo(box: Bounds, aim: PasteAim): { dxMm: number; dyMm: number } {
  const middle = { xMm: (box.minXMm + box.maxXMm) / 2, yMm: (box.minYMm + box.maxYMm) / 2 };
  // Whole millimetres, so that what lay on the grid stays on it.
  const toward = ({ xMm, yMm }: PlanPoint) => ({
    dxMm: Math.round(xMm - middle.xMm),
    dyMm: Math.round(yMm - middle.yMm),
  });
  if (aim.to === 'place') return toward(aim.at);
  const by = besideMm * aim.times;
  const { view } = aim;
  const inView =
    !view ||
    (middle.xMm + by >= view.minXMm &&
      middle.xMm + by <= view.maxXMm &&
      middle.yMm - by >= view.minYMm &&
      middle.yMm - by <= view.maxYMm);
  if (inView) return { dxMm: by, dyMm: -by };
  return toward({ xMm: (view.minXMm + view.maxXMm) / 2, yMm: (view.minYMm + view.maxYMm) / 2 });
}

/** What was added, without the nodes at the ends of added runs. */
export function picksOf(patch: Patch): readonly string[] {
  const ends = new Set<string>();
  for (const record of patch.added) {
    if (idKind(record.id) !== 'segment') continue;
    const { fromNodeId, toNodeId } = record as Segment;
    ends.add(fromNodeId).add(toNodeId);
  }
  return patch.added.map((record) => record.id as string).filter((id) => !ends.has(id));
}
