import type { Chance } from '../quantity/chance.ts';
import { type IdKind, idKind, type MapId, newId } from '../quantity/id.ts';
import type { MapDocument } from './map-document.ts';
import type { PathStep } from './records.ts';

/**
 * A copy of a map under a new id and name, at revision 0. With `freshIds`, every record gets a new id and
 * everything that names it follows, so that parts of both maps can live side by side. O(records).
 * @example
 * copyMap(sample.map, { id: 'map:copy', name: 'Copy' }).details.name // => 'Copy'
 */
export function copyMap(
  map: MapDocument,
  input: { readonly id: MapId; readonly name: string; readonly freshIds?: Chance },
): MapDocument {
  const copy: MapDocument = {
    ...map,
    id: input.id,
    revision: 0,
    details: { ...map.details, name: input.name },
  };
  return input.freshIds ? withFreshIds(copy, input.freshIds) : copy;
}

function withFreshIds(map: MapDocument, chance: Chance): MapDocument {
  const known = new Map<string, string>();
  const taken = new Set<string>();
  const fresh = <T extends string>(id: T): T => {
    let given = known.get(id);
    if (given === undefined) {
      do given = newId(idKind(id) as IdKind, chance);
      while (taken.has(given));
      known.set(id, given);
      taken.add(given);
    }
    return given as T;
  };
  const table = <K extends string, T extends { readonly id: K }>(
    records: ReadonlyMap<K, T>,
    rename: (record: T) => T,
  ): Map<K, T> =>
    new Map(
      [...records.values()].map((record) => {
        const renamed = { ...rename(record), id: fresh(record.id) };
        return [renamed.id, renamed];
      }),
    );
  const step = (each: PathStep): PathStep => ({ ...each, segmentId: fresh(each.segmentId) });
  return {
    ...map,
    outlines: table(map.outlines, (outline) => outline),
    underlays: table(map.underlays, (underlay) => underlay),
    nodes: table(map.nodes, (node) => ({ ...node, panelIds: node.panelIds.map(fresh) })),
    segments: table(map.segments, (segment) => ({
      ...segment,
      fromNodeId: fresh(segment.fromNodeId),
      toNodeId: fresh(segment.toNodeId),
      clips: segment.clips.map((clip) => ({ ...clip, id: fresh(clip.id) })),
      tags: segment.tags.map((tag) => ({ ...tag, panelId: fresh(tag.panelId) })),
    })),
    panels: table(map.panels, (panel) => ({ ...panel, offFirst: panel.offFirst.map(fresh) })),
    rubSpots: table(map.rubSpots, (spot) => spot),
    circuits: table(map.circuits, (circuit) => ({
      ...circuit,
      path: circuit.path.map(step),
      pins: circuit.pins.map((pin) => ({ ...pin, nodeId: fresh(pin.nodeId) })),
      ends: [
        { ...circuit.ends[0], nodeId: circuit.ends[0].nodeId && fresh(circuit.ends[0].nodeId) },
        { ...circuit.ends[1], nodeId: circuit.ends[1].nodeId && fresh(circuit.ends[1].nodeId) },
      ],
    })),
  };
}
