import type { Bounds } from '../../geometry/bounds.ts';
import { fail, type Result } from '../../quantity/result.ts';
import type { MapDocument } from '../map-document.ts';
import { movedThings, type PlanOffset } from '../moved-things.ts';
import type { Patch } from '../patch.ts';
import { type ThingGroup, thingGroups } from '../thing-groups.ts';

/**
 * Where the things go: their edges to the outermost of them on that side, their middles onto the car's
 * centre line, or their middles evenly between the first and the last, along the car or across it.
 */
export type Alignment =
  | 'left'
  | 'right'
  | 'front'
  | 'rear'
  | 'centre-line'
  | 'spread-along'
  | 'spread-across';

/**
 * Lines up or spreads picked things; each moves whole, runs that share a node as one. What sits on a run
 * whose end is moved by others stays where it physically is. Refuses `not-found`, and too few
 * things to line up (`bad-value`: two, three to spread, one for the centre line).
 * @example
 * alignThings(sample.map, { ids: ['node:west', 'node:far'], how: 'front' }).value.changed.find(([, after]) => after.id === 'node:far')[1].at.xMm // => 0
 */
export function alignThings(
  map: MapDocument,
  input: { readonly ids: readonly string[]; readonly how: Alignment },
): Result<Patch> {
  const found = thingGroups(map, input.ids);
  if (!found.ok) return found;
  const groups = found.value;
  const needed = fewest(input.how);
  if (groups.length < needed) {
    return fail({ code: 'bad-value', field: 'ids', value: groups.length, allowed: `>= ${needed}` });
  }
  const offsets = new Map<string, PlanOffset>();
  const shift = (group: ThingGroup, dxMm: number, dyMm: number): void => {
    if (dxMm === 0 && dyMm === 0) return;
    for (const id of group.ids) offsets.set(id, { dxMm, dyMm });
  };
  switch (input.how) {
    case 'left': {
      const edge = Math.min(...groups.map((group) => group.bounds.minYMm));
      for (const group of groups) shift(group, 0, edge - group.bounds.minYMm);
      break;
    }
    case 'right': {
      const edge = Math.max(...groups.map((group) => group.bounds.maxYMm));
      for (const group of groups) shift(group, 0, edge - group.bounds.maxYMm);
      break;
    }
    case 'front': {
      const edge = Math.min(...groups.map((group) => group.bounds.minXMm));
      for (const group of groups) shift(group, edge - group.bounds.minXMm, 0);
      break;
    }
    case 'rear': {
      const edge = Math.max(...groups.map((group) => group.bounds.maxXMm));
      for (const group of groups) shift(group, edge - group.bounds.maxXMm, 0);
      break;
    }
    case 'centre-line':
      for (const group of groups) shift(group, 0, map.details.centreLineYMm - middleY(group.bounds));
      break;
    case 'spread-along':
      for (const [group, byMm] of spread(groups, middleX)) shift(group, byMm, 0);
      break;
    case 'spread-across':
      for (const [group, byMm] of spread(groups, middleY)) shift(group, 0, byMm);
      break;
  }
  return movedThings(map, offsets);
}

function fewest(how: Alignment): number {
  if (how === 'centre-line') return 1;
  return how === 'spread-along' || how === 'spread-across' ? 3 : 2;
}

const middleX = (bounds: Bounds): number => (bounds.minXMm + bounds.maxXMm) / 2;
const middleY = (bounds: Bounds): number => (bounds.minYMm + bounds.maxYMm) / 2;

/** How far each group moves so that the middles lie evenly between the outermost two. */
function spread(
  groups: readonly ThingGroup[],
  middle: (bounds: Bounds) => number,
): readonly (readonly [ThingGroup, number])[] {
  const inOrder = [...groups].sort((a, b) => middle(a.bounds) - middle(b.bounds));
  const first = middle((inOrder[0] as ThingGroup).bounds);
  const last = middle((inOrder.at(-1) as ThingGroup).bounds);
  const step = (last - first) / (inOrder.length - 1);
  return inOrder.map((group, i) => [group, first + step * i - middle(group.bounds)] as const);
}
