import { allNodes } from '#core/circuit/circuit-line.ts';
import { putRight } from '#core/job/put-right.ts';
import type { Stretch } from '#core/job/reading.ts';
import type { EntryId, NodeId } from '#core/quantity/id.ts';
import { closeWords } from '../../language/close.ts';
import { nameOf } from '../../language/name-of.ts';
import { Choice } from '../../parts/index.ts';
import { stretchesBetween } from '../../session/stretches-between.ts';
import { useFind } from './find-context.ts';
import { plugHalfMm } from './look-pieces.ts';

const words = closeWords.found;

/** Whether the cause was in the wire or in one of the plugs that were looked into with it. */
export function FoundPart({ entryId }: { readonly entryId: EntryId }) {
  const { open, standing, session, say } = useFind();
  const look = standing.find(({ id }) => id === entryId);
  if (look?.type !== 'inspection' || !look.nodeIds || look.nodeIds.length === 0) return null;
  const { id: _id, at: _at, partNodeId, ...rest } = look;
  const first = putRight(open.job).get(entryId);
  /** Where a plug sits on the circuit; back in the wire, what was looked at. */
  const stretchesOf = (chosen: NodeId | 'wire'): readonly Stretch[] => {
    const node = open.line && allNodes(open.line).find(({ nodeId }) => nodeId === chosen);
    if (open.line && node) {
      return stretchesBetween(open.line, node.stationMm - plugHalfMm, node.stationMm + plugHalfMm);
    }
    return first?.type === 'inspection' ? first.stretches : look.stretches;
  };
  const choose = (chosen: NodeId | 'wire'): void => {
    if (chosen === (partNodeId ?? 'wire')) return;
    session.add(
      { type: 'take-back', entryId },
      {
        ...rest,
        stretches: [...stretchesOf(chosen)],
        ...(chosen === 'wire' ? {} : { partNodeId: chosen }),
      },
    );
  };
  return (
    <Choice<NodeId | 'wire'>
      label={words.whichPart}
      value={partNodeId ?? 'wire'}
      options={[
        { value: 'wire', label: words.inWire },
        ...look.nodeIds.map((id) => ({ value: id, label: words.inPart(say(nameOf(open.map, id))) })),
      ]}
      onChange={choose}
    />
  );
}
