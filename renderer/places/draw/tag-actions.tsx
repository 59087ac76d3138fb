import { confirmTags } from '#core/map/commands/confirm-tags.ts';
import { proposeTags } from '#core/map/commands/propose-tags.ts';
import type { SegmentId } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { Button } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';

/** Proposes which panels hide the runs from the areas drawn over them, and confirms proposals; without `segmentIds`, for all runs. */
export function TagActions({ segmentIds }: { readonly segmentIds?: readonly SegmentId[] }) {
  const { map, make } = useDraw();
  if (segmentIds?.length === 0 || map.segments.size === 0) return null;
  const runs = segmentIds?.flatMap((id) => map.segments.get(id) ?? []) ?? [...map.segments.values()];
  const waiting = runs.reduce((sum, run) => sum + run.tags.filter((tag) => !tag.confirmed).length, 0);
  const input = segmentIds ? { segmentIds } : {};
  return (
    <div className="tag-actions">
      <h3>{drawWords.tags.title}</h3>
      <div className="button-row">
        <Button
          disabled={map.panels.size === 0}
          onClick={() => make(proposeTags(map, input), { label: 'edit.proposeTags' })}
        >
          {drawWords.tags.propose}
        </Button>
        <Button
          disabled={waiting === 0}
          onClick={() => make(confirmTags(map, input), { label: 'edit.confirmTags' })}
        >
          {segmentIds ? drawWords.tags.confirmRun : drawWords.tags.confirmAll}
          {waiting > 0 ? ` (${waiting})` : ''}
        </Button>
      </div>
    </div>
  );
}
