import type { MapDocument } from './map-document.ts';
import { otherSideName } from './other-side-name.ts';

/**
 * A map whose `mirrored` things (ids) are called by the side they now lie on: left and right change places in
 * the names of outlines, nodes, panels and rub spots, in those of runs that were mirrored with both their
 * nodes, with their routes, and of circuits of which every run was. Notes stay as written. O(records).
 * @example
 * sidesRenamed(sample.map, ['segment:front', 'node:west', 'node:middle']).segments.get('segment:front').routeName // => 'Right sill'
 */
export function sidesRenamed(map: MapDocument, mirrored: Iterable<string>): MapDocument {
  const turned = new Set(mirrored);
  const renamed = <K extends string, T extends { readonly id: K; readonly name: string }>(
    table: ReadonlyMap<K, T>,
    moved: (record: T) => boolean = ({ id }) => turned.has(id),
  ): Map<K, T> =>
    new Map(
      [...table].map(([id, each]) => [id, moved(each) ? { ...each, name: otherSideName(each.name) } : each]),
    );
  const wholeRuns = new Set(
    [...map.segments.values()]
      .filter((run) => [run.id, run.fromNodeId, run.toNodeId].every((id) => turned.has(id)))
      .map((run) => run.id),
  );
  const segments = renamed(map.segments, ({ id }) => wholeRuns.has(id));
  for (const [id, run] of segments) {
    if (wholeRuns.has(id)) segments.set(id, { ...run, routeName: otherSideName(run.routeName) });
  }
  return {
    ...map,
    outlines: renamed(map.outlines),
    nodes: renamed(map.nodes),
    segments,
    panels: renamed(map.panels),
    rubSpots: renamed(map.rubSpots),
    circuits: renamed(
      map.circuits,
      ({ path }) => path.length > 0 && path.every(({ segmentId }) => wholeRuns.has(segmentId)),
    ),
  };
}
