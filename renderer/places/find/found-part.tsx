import type { EntryId, NodeId } from '#core/quantity/id.ts';
import { closeWords } from '../../language/close.ts';
import { nameOf } from '../../language/name-of.ts';
import { Choice } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

const words = closeWords.found;

/** Whether the cause was in the wire or in one of the plugs that were looked into with it. */
export function FoundPart({ entryId }: { readonly entryId: EntryId }) {
  const { open, standing, session, say } = useFind();
  const look = standing.find(({ id }) => id === entryId);
  if (look?.type !== 'inspection' || !look.nodeIds || look.nodeIds.length === 0) return null;
  const { id: _id, at: _at, partNodeId, ...rest } = look;
  const choose = (chosen: NodeId | 'wire'): void => {
    if (chosen === (partNodeId ?? 'wire')) return;
    session.takeBack(entryId);
    session.add({ ...rest, ...(chosen === 'wire' ? {} : { partNodeId: chosen }) });
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
