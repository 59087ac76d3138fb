import { nearestOnBodyPiece } from '../../geometry/nearest-on-piece.ts';
import type { BodyPoint } from '../../geometry/place.ts';
import type { NodeId, SegmentId } from '../../quantity/id.ts';
import type { EditProblem } from '../../quantity/problem.ts';
import { fail, type Result } from '../../quantity/result.ts';
import { findRecord } from '../find-record.ts';
import type { MapDocument } from '../map-document.ts';
import { draftOf } from '../map-draft.ts';
import { mergedTags } from '../panel-tags.ts';
import type { Patch } from '../patch.ts';
import type { Circuit, Segment } from '../records.ts';
import { reversedRun } from '../reverse-run.ts';
import { segmentLine, wireLengthMm } from '../segment-line.ts';
import { farNodeId, runsAtNode } from '../topology.ts';

/** A bend this close to the straight line between its neighbours bends nothing. */
const straightMm = 1e-6;

/**
 * Joins the two runs that meet at a plain branch into one, and takes the branch out: what a split did is
 * undone, whatever else was done since. The run with the id given in `keepId`, else the one that ends at
 * the node, else the smaller id, keeps its id, name and direction. Refuses `not-found`, `not-joinable`
 * (not two runs, or a node that is more than a branch), `same-node` (a ring), `runs-differ` (covering,
 * diameter, traits, rounding, checked or not, in view or not), `in-use` by circuits that end there, and
 * `zero-length`.
 * @example
 * joinSegments(sample.map, { nodeId: 'node:middle' }).problem // => { code: 'not-joinable', node: 'node:middle', runs: 2, kind: 'inline-connector' }
 */
export function joinSegments(
  map: MapDocument,
  input: { readonly nodeId: NodeId; readonly keepId?: SegmentId },
): Result<Patch> {
  const node = findRecord(map.nodes, input.nodeId);
  if (!node.ok) return node;
  const runs = runsAtNode(map, input.nodeId);
  const { kind } = node.value;
  const kept =
    runs.find((run) => run.id === input.keepId) ??
    runs.find((run) => run.toNodeId === input.nodeId) ??
    runs[0];
  const other = runs.find((run) => run !== kept);
  if (!kept || !other || runs.length !== 2 || kind !== 'branch') {
    return fail({ code: 'not-joinable', node: input.nodeId, runs: runs.length, kind });
  }
  const farOfOther = farNodeId(other, input.nodeId);
  if (farNodeId(kept, input.nodeId) === farOfOther) return fail({ code: 'same-node', node: farOfOther });
  const problem = joinProblem(map, input.nodeId, kept, other);
  if (problem) return fail(problem);

  const keptLine = segmentLine(map, kept);
  const otherLine = segmentLine(map, other);
  if (!keptLine) return fail({ code: 'zero-length', thing: kept.id });
  if (!otherLine) return fail({ code: 'zero-length', thing: other.id });
  const keptFirst = kept.toNodeId === input.nodeId;
  const sameWay = keptFirst ? other.fromNodeId === input.nodeId : other.toNodeId === input.nodeId;
  const turned = sameWay ? other : reversedRun(other, otherLine.lengthMm);
  const [first, second] = keptFirst ? [kept, turned] : [turned, kept];
  const firstMm = keptFirst ? keptLine.lengthMm : otherLine.lengthMm;
  const fromAt = map.nodes.get(first.fromNodeId)?.at as BodyPoint;
  const toAt = map.nodes.get(second.toNodeId)?.at as BodyPoint;
  const before = first.bends[first.bends.length - 1] ?? fromAt;
  const after = second.bends[0] ?? toAt;
  const straight = nearestOnBodyPiece(node.value.at, before, after).distanceMm <= straightMm;
  const measured = kept.measuredLengthMm !== null || other.measuredLengthMm !== null;

  const bends = [...first.bends, ...(straight ? [] : [node.value.at]), ...second.bends];
  const joined: Segment = {
    ...kept,
    smooth: kept.smooth && bends.length === 0,
    fromNodeId: first.fromNodeId,
    toNodeId: second.toNodeId,
    bends,
    measuredLengthMm: measured
      ? wireLengthMm(kept, keptLine.lengthMm) + wireLengthMm(other, otherLine.lengthMm)
      : null,
    clips: [
      ...first.clips,
      ...second.clips.map((clip) => ({ ...clip, stationMm: clip.stationMm + firstMm })),
    ],
    tags: mergedTags([
      ...first.tags,
      ...second.tags.map((tag) => ({ ...tag, fromMm: tag.fromMm + firstMm, toMm: tag.toMm + firstMm })),
    ]),
    note: [...new Set([first.note, second.note])].filter((note) => note).join('\n'),
  };
  const draft = draftOf(map);
  draft.put(joined);
  draft.drop(other.id);
  draft.drop(input.nodeId);
  for (const circuit of map.circuits.values()) {
    const passes = circuit.path.some((step) => step.segmentId === other.id);
    const pinned = circuit.pins.some((pin) => pin.nodeId === input.nodeId);
    if (!passes && !pinned) continue;
    draft.put({
      ...circuit,
      path: circuit.path.filter((step) => step.segmentId !== other.id),
      pins: circuit.pins.filter((pin) => pin.nodeId !== input.nodeId),
    });
  }
  return draft.finish();
}

function joinProblem(map: MapDocument, nodeId: NodeId, kept: Segment, other: Segment): EditProblem | null {
  const traits = (segment: Segment): string => [...segment.traits].sort().join();
  const differing = (
    [
      ['covering', kept.covering === other.covering],
      ['bundleDiameterMm', kept.bundleDiameterMm === other.bundleDiameterMm],
      ['traits', traits(kept) === traits(other)],
      ['smooth', !rounded(kept) && !rounded(other)],
      ['unchecked', kept.unchecked === other.unchecked],
      ['inView', (kept.inView ?? false) === (other.inView ?? false)],
    ] as const
  ).find(([, same]) => !same);
  if (differing) {
    return { code: 'runs-differ', first: kept.id, second: other.id, field: differing[0] };
  }
  const ending = [...map.circuits.values()].filter((circuit) => endsAt(circuit, nodeId, kept.id, other.id));
  if (ending.length > 0) {
    return { code: 'in-use', thing: nodeId, by: ending.map((circuit) => circuit.id).sort() };
  }
  return null;
}

const rounded = (segment: Segment): boolean => segment.smooth && segment.bends.length > 0;

/** Whether a circuit uses one of the two runs without going straight on into the other. */
function endsAt(circuit: Circuit, nodeId: NodeId, keptId: SegmentId, otherId: SegmentId): boolean {
  if (circuit.ends.some((end) => end.nodeId === nodeId)) return true;
  const ids = circuit.path.map((step) => step.segmentId);
  const ofBoth = (id: SegmentId | undefined): boolean => id === keptId || id === otherId;
  for (let i = 0; i < ids.length; i++) {
    if (!ofBoth(ids[i])) continue;
    if (!ofBoth(ids[i + 1]) || ids[i] === ids[i + 1]) return true;
    i++;
  }
  return false;
}
