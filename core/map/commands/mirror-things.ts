import type { Chance } from '../../quantity/chance.ts';
import { idKind, type PanelId } from '../../quantity/id.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { samePlaceMm } from '../../quantity/tolerance.ts';
import { copiedThings } from '../copied-things.ts';
import type { MapDocument, MapRecord } from '../map-document.ts';
import { draftOf, recordOf } from '../map-draft.ts';
import { mirroredPoint, mirroredVertex } from '../mirror-geometry.ts';
import { mirrorMap } from '../mirror-map.ts';
import { otherSideName } from '../other-side-name.ts';
import type { Patch } from '../patch.ts';
import { putCopies } from '../put-copies.ts';
import type { MapNode, Segment } from '../records.ts';

/**
 * Mirrors picked things about the centre line: outlines, panels, runs with their nodes, nodes and rub
 * spots. `copy` leaves them and adds their twins on the other side, with left and right changed over in
 * their names; a node on the centre line is shared. Where a thing speaks of a panel, its twin speaks of the
 * same panel if that reaches over the centre line, else of the panel of the other side's name, else of none. `turn` mirrors the things themselves. Mirrored runs are marked unchecked until someone has seen
 * them on a car. Pictures stay. Refuses `not-found`, and a copy of nothing that has a side (`bad-value`).
 * @example
 * mirrorThings(sample.map, { ids: ['panel:seat'], how: 'turn' }, () => 0).value.changed.length // => 1
 */
export function mirrorThings(
  map: MapDocument,
  input: { readonly ids: readonly string[]; readonly how: 'copy' | 'turn' },
  chance: Chance,
): Result<Patch> {
  const ids = input.ids.filter((id) => idKind(id) !== 'underlay');
  return input.how === 'copy' ? mirroredCopies(map, ids, chance) : turned(map, ids);
}

function mirroredCopies(map: MapDocument, ids: readonly string[], chance: Chance): Result<Patch> {
  const things = copiedThings(map, ids);
  if (!things.ok) return things;
  if (things.value.records.length === 0) {
    return fail({ code: 'bad-value', field: 'ids', value: 0, allowed: '>= 1' });
  }
  const centre = map.details.centreLineYMm;
  const onCentre = (record: MapRecord): boolean =>
    idKind(record.id) === 'node' && Math.abs((record as MapNode).at.yMm - centre) < samePlaceMm;
  const overCentre = (id: string): boolean => {
    const area = map.panels.get(id as PanelId)?.area ?? [];
    return area.some((point) => point.yMm < centre) && area.some((point) => point.yMm > centre);
  };
  const panelNamed = new Map([...map.panels.values()].map(({ name, id }) => [name, id]));
  const onOtherSide = (id: string): string | null => {
    const panel = map.panels.get(id as PanelId);
    if (!panel || overCentre(id)) return null;
    const twin = panelNamed.get(otherSideName(panel.name)) ?? null;
    return twin === id ? null : twin;
  };
  const draft = draftOf(map);
  putCopies(
    draft,
    things.value,
    {
      place: {
        point: (point) => mirroredPoint(point, centre),
        vertex: (vertex) => mirroredVertex(vertex, centre),
      },
      name: otherSideName,
      keepsMention: (id) => idKind(id) !== 'panel' || overCentre(id),
      standIn: onOtherSide,
      shares: onCentre,
    },
    chance,
  );
  return draft.finish();
}

function turned(map: MapDocument, ids: readonly string[]): Result<Patch> {
  const ticked = new Set(ids);
  for (const id of ids) {
    const record = recordOf(map, id);
    if (!record) return fail({ code: 'not-found', thing: id });
    if (idKind(id) !== 'segment') continue;
    const { fromNodeId, toNodeId } = record as Segment;
    ticked.add(fromNodeId).add(toNodeId);
  }
  const { map: mirrored, markedSegmentIds } = mirrorMap(map, { id: map.id, ticked });
  const draft = draftOf(map);
  for (const id of new Set<string>([...ticked, ...markedSegmentIds])) {
    const record = id === map.details.id ? null : recordOf(mirrored, id);
    if (record) draft.put(record);
  }
  return draft.finish();
}
