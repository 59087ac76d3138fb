import type { OutlineId } from '#core/quantity/id.ts';
import type { Handle } from '../../board/handles.ts';
import { loomWords } from '../../language/draw-loom.ts';
import { Button } from '../../parts/index.ts';
import { removeCorner } from '../../tools/select/corners.ts';
import { bendCorner, isCurved } from '../../tools/select/curve-grips.ts';
import { useDraw } from './draw-context.ts';

/** What can be done to the corner that was pressed last. */
export function CornerBar({ corner }: { readonly corner: Handle }) {
  const { map, make } = useDraw();
  const outlineId = corner.id as OutlineId;
  const vertex = corner.kind === 'vertex' ? map.outlines.get(outlineId)?.vertices[corner.index] : undefined;
  return (
    <fieldset className="button-row corner-bar">
      <legend className="only-read-aloud">{loomWords.corner}</legend>
      {vertex ? (
        <Button
          onClick={() =>
            make(bendCorner(map, outlineId, corner.index, !isCurved(vertex)), { label: 'edit.bendCorner' })
          }
        >
          {isCurved(vertex) ? loomWords.straight : loomWords.curved}
        </Button>
      ) : null}
      <Button onClick={() => make(removeCorner(map, corner), { label: 'edit.removeCorner' })}>
        {loomWords.takeOut}
      </Button>
    </fieldset>
  );
}
