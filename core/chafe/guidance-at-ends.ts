import type { NodeKind } from '../map/kinds.ts';
import type { MapDocument } from '../map/map-document.ts';
import type { Circuit, MapNode, Segment } from '../map/records.ts';
import type { NodeId } from '../quantity/id.ts';
import { aircraftGuidance, type GuidanceFlag } from './aircraft-guidance.ts';
import type { RunContext } from './run-context.ts';
import type { RunSurroundings } from './run-surroundings.ts';

/** Nodes a wire goes through without being put on a terminal. */
const passedThrough: ReadonlySet<NodeKind> = new Set(['branch', 'splice', 'grommet', 'loose-end']);

/** A loom that dips by less than this does not drip, mm. */
const dripMm = 5;

/**
 * Ends of a wet run where water runs down the loom into a plug or part, because the loom does not dip before it, and
 * splices too near to where the wire ends. Heights must have been drawn for the former.
 * @example
 * endFlags(runContext(sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions), defaultAssumptions)) // => []
 */
export function endFlags(run: RunContext): readonly GuidanceFlag[] {
  const { from, to, line, hasHeight } = run.around.shape;
  const flags: GuidanceFlag[] = [];
  const lowestMm = line.points.reduce((low, { zMm }) => Math.min(low, zMm), Number.POSITIVE_INFINITY);
  const places = [
    { node: from, far: to, atMm: 0 },
    { node: to, far: from, atMm: run.lengthMm },
  ];
  for (const { node, far, atMm } of places) {
    if (passedThrough.has(node.kind)) continue;
    const dips = lowestMm <= node.at.zMm - dripMm;
    if (run.segment.traits.includes('wet') && hasHeight && !dips) {
      flags.push({ code: 'no-drip-loop', thing: node.id, atMm, mm: null, advisedMm: null });
    }
    const { spliceToEndMm } = aircraftGuidance;
    if (far.kind === 'splice' && run.lengthMm < spliceToEndMm) {
      const at = { thing: far.id, atMm: run.lengthMm - atMm };
      flags.push({ code: 'splice-near-end', ...at, mm: run.lengthMm, advisedMm: spliceToEndMm });
    }
  }
  return flags;
}

/**
 * Circuits through a run that are spliced more than once between the two plugs or parts on either side of it.
 * @example
 * spliceFlags(sample.map, sample.middle, runSurroundings(sample.map, sample.middle, defaultAssumptions)) // => []
 */
export function spliceFlags(
  map: MapDocument,
  segment: Segment,
  { circuits }: Pick<RunSurroundings, 'circuits'>,
): readonly GuidanceFlag[] {
  return circuits
    .filter((circuit) => splicesAround(map, segment, circuit) > aircraftGuidance.splicesBetweenPlugs)
    .map(({ id }) => ({ code: 'many-splices', thing: id, atMm: null, mm: null, advisedMm: null }));
}

function splicesAround(map: MapDocument, segment: Segment, { path }: Circuit): number {
  const step = path.findIndex(({ segmentId }) => segmentId === segment.id);
  const nodes = path.map(({ segmentId, reversed }) => {
    const run = map.segments.get(segmentId);
    const [from, to] = run ? [run.fromNodeId, run.toNodeId] : [null, null];
    return reversed ? { before: to, after: from } : { before: from, after: to };
  });
  return (
    splicesUntilEnd(
      map,
      nodes
        .slice(0, step + 1)
        .map(({ before }) => before)
        .reverse(),
    ) +
    splicesUntilEnd(
      map,
      nodes.slice(step).map(({ after }) => after),
    )
  );
}

function splicesUntilEnd(map: MapDocument, nodeIds: readonly (NodeId | null)[]): number {
  let splices = 0;
  for (const id of nodeIds) {
    const node: MapNode | undefined = id === null ? undefined : map.nodes.get(id);
    if (!node || !passedThrough.has(node.kind)) break;
    if (node.kind === 'splice') splices++;
  }
  return splices;
}
