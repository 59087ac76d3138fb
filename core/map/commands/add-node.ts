import type { Result } from '../../quantity/result.ts';
import { addRecord } from '../add-record.ts';
import type { MapDocument } from '../map-document.ts';
import type { Patch } from '../patch.ts';
import type { MapNode } from '../records.ts';

/**
 * Adds a node that stands by itself: a component, plug, earth point or pass-through. Refuses
 * `duplicate-id`, `bad-field` and `missing-reference`.
 * @example
 * addNode(sample.map, { node: { ...sample.map.nodes.get('node:west'), id: 'node:new' } }).value.added[0].id // => 'node:new'
 */
export function addNode(map: MapDocument, input: { readonly node: MapNode }): Result<Patch> {
  return addRecord(map, input.node);
}
