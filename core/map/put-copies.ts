import type { Chance } from '../quantity/chance.ts';
import { type IdKind, idKind, newId } from '../quantity/id.ts';
import type { CopiedThings } from './copied-things.ts';
import { type MapDocument, type MapRecord, type TableKind, tableOfKind } from './map-document.ts';
import type { MapDraft } from './map-draft.ts';
import { movedRecord, type PlaceRule } from './moved-record.ts';
import { nextOrder } from './next-order.ts';
import { mergedTags } from './panel-tags.ts';
import type { MapNode, Panel, RubSpot, Segment } from './records.ts';
import { renamedRecord } from './renamed-record.ts';
import { clipIdsOf } from './with-clips.ts';

/** What becomes of copies on the map they are put on. */
export interface CopyRule {
  readonly place: PlaceRule;
  readonly name: (name: string) => string;
  /** Whether copies may still speak of something that was not copied but is on the map. */
  readonly keepsMention: (id: string) => boolean;
  /** What copies speak of instead of something on the map that was not copied; nothing by default. */
  readonly standIn?: (id: string) => string | null;
  /** A record that stays as it is on the map and is shared instead of copied. */
  readonly shares: (record: MapRecord) => boolean;
}

/**
 * Puts copies into a draft under fresh ids, and gives the new id of each by its old one. Runs are marked
 * unchecked, tags of panels that were not copied become proposals again, and a rub spot's finds stay
 * with the original. Outlines, pictures, panels and circuits come last in their order.
 * @example
 * [...putCopies(draftOf(sample.map), { records: [sample.seat] }, { place: movedBy(0, 0), name: (name) => name, keepsMention: () => true, shares: () => false }, () => 0)] // => [['panel:seat', 'panel:22222222']]
 */
export function putCopies(
  draft: MapDraft,
  things: CopiedThings,
  rule: CopyRule,
  chance: Chance,
): ReadonlyMap<string, string> {
  const { map } = draft;
  const renamed = new Map<string, string>();
  const copies = things.records.filter((record) => !(rule.shares(record) && hasRecord(map, record.id)));
  const freshClipId = clipIdMaker(map, copies, chance);
  const given = new Set<string>();
  for (const record of copies) {
    let id: string;
    do id = draft.freshId(idKind(record.id) as TableKind, chance);
    while (given.has(id));
    given.add(id);
    renamed.set(record.id, id);
  }
  const rename = <I extends string>(id: I): I => {
    if (idKind(id) === 'clip') return freshClipId() as I;
    return ((renamed.get(id) ?? rule.standIn?.(id)) as I | undefined | null) ?? id;
  };
  const mayName = (id: string): boolean =>
    renamed.has(id) || (hasRecord(map, id) && (rule.keepsMention(id) || Boolean(rule.standIn?.(id))));
  const orderOf = orderMaker(map);
  for (const record of copies) {
    const loose = withoutMentions(record, mayName, (id) => renamed.has(id));
    const placed = movedRecord(renamedRecord(loose, rename), rule.place);
    const named = 'name' in placed ? { ...placed, name: rule.name(placed.name) } : placed;
    draft.put('order' in named ? { ...named, order: orderOf(idKind(named.id)) } : named);
  }
  return renamed;
}

const hasRecord = (map: MapDocument, id: string): boolean => {
  const kind: string = idKind(id);
  if (!Object.hasOwn(tableOfKind, kind)) return false;
  return (map[tableOfKind[kind as TableKind]] as ReadonlyMap<string, MapRecord>).has(id);
};

/** Only looks through the map's clips when some are copied: on a large map that is most of the work. */
function clipIdMaker(map: MapDocument, copies: readonly MapRecord[], chance: Chance): () => string {
  const anyClips = copies.some((record) => 'clips' in record && record.clips.length > 0);
  const taken = new Set<string>(anyClips ? clipIdsOf(map) : []);
  return () => {
    let id = newId('clip', chance);
    while (taken.has(id)) id = newId('clip', chance);
    taken.add(id);
    return id;
  };
}

/** The next free place at the end of a kind's order. */
function orderMaker(map: MapDocument): (kind: IdKind) => number {
  const next = new Map<IdKind, number>();
  return (kind) => {
    const table = map[tableOfKind[kind as TableKind]] as ReadonlyMap<string, { readonly order: number }>;
    const order = next.get(kind) ?? nextOrder(table);
    next.set(kind, order + 1);
    return order;
  };
}

function withoutMentions(
  record: MapRecord,
  mayName: (id: string) => boolean,
  isCopied: (id: string) => boolean,
): MapRecord {
  switch (idKind(record.id)) {
    case 'node': {
      const node = record as MapNode;
      return { ...node, panelIds: node.panelIds.filter(mayName) };
    }
    case 'panel': {
      const panel = record as Panel;
      return { ...panel, offFirst: panel.offFirst.filter(mayName) };
    }
    case 'segment': {
      const segment = record as Segment;
      const tags = segment.tags
        .filter((tag) => mayName(tag.panelId))
        .map((tag) => (isCopied(tag.panelId) ? tag : { ...tag, confirmed: false }));
      return { ...segment, tags: mergedTags(tags), unchecked: true };
    }
    case 'rub-spot':
      return { ...(record as RubSpot), timesFound: 0 };
    default:
      return record;
  }
}
