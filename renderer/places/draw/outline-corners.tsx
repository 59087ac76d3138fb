import { useState } from 'react';
import { insertVertex } from '#core/map/commands/insert-vertex.ts';
import { moveVertex } from '#core/map/commands/move-vertex.ts';
import { removeVertex } from '#core/map/commands/remove-vertex.ts';
import type { Outline } from '#core/map/records.ts';
import { drawWords } from '../../language/draw.ts';
import { loomWords } from '../../language/draw-loom.ts';
import { Button, Checkbox, Disclosure } from '../../parts/index.ts';
import { bendCorner, isCurved } from '../../tools/select/curve-grips.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';

/** The corners of an outline as figures: the same edits as on the board. */
export function OutlineCorners({ outline }: { readonly outline: Outline }) {
  const { map, make } = useDraw();
  const [open, setOpen] = useState(false);
  const { id: outlineId, vertices, closed } = outline;
  return (
    <Disclosure label={`${loomWords.corners} (${vertices.length})`} open={open} onToggle={setOpen}>
      {vertices.map((vertex, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a corner has no name but its place in the row.
        <fieldset key={index} className="bend">
          <legend className="field-label">{loomWords.cornerName(index + 1)}</legend>
          <div className="form-row">
            {(['x', 'y'] as const).map((axis) => (
              <FigureField
                key={axis}
                label={drawWords.fields[axis]}
                value={vertex[`${axis}Mm`]}
                unit={drawWords.units.mm}
                onChange={(mm) =>
                  make(moveVertex(map, { outlineId, index, at: { ...vertex, [`${axis}Mm`]: mm ?? 0 } }), {
                    label: 'edit.moveCorner',
                    joinKey: `${outlineId}.${index}.${axis}`,
                  })
                }
              />
            ))}
          </div>
          <Checkbox
            label={loomWords.curved}
            checked={isCurved(vertex)}
            onChange={(curved) =>
              make(bendCorner(map, outlineId, index, curved), { label: 'edit.bendCorner' })
            }
          />
          <div className="button-row">
            {closed || index < vertices.length - 1 ? (
              <Button
                weight="quiet"
                onClick={() =>
                  make(insertVertex(map, { outlineId, edge: index, share: 0.5 }), {
                    label: 'edit.insertCorner',
                  })
                }
              >
                {loomWords.insertAfter}
              </Button>
            ) : null}
            <Button
              weight="quiet"
              onClick={() => make(removeVertex(map, { outlineId, index }), { label: 'edit.removeCorner' })}
            >
              {loomWords.takeOut}
            </Button>
          </div>
        </fieldset>
      ))}
    </Disclosure>
  );
}
