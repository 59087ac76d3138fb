import { useState } from 'react';
import { moveBend } from '#core/map/commands/move-bend.ts';
import { removeBend } from '#core/map/commands/remove-bend.ts';
import type { Segment } from '#core/map/records.ts';
import { drawWords } from '../../language/draw.ts';
import { Button, Disclosure } from '../../parts/index.ts';
import { useDraw } from './draw-context.ts';
import { FigureField } from './figure-field.tsx';

const axes = ['x', 'y', 'z'] as const;

/** The bends of a run with their places and heights. */
export function RunBends({ segment }: { readonly segment: Segment }) {
  const { map, make } = useDraw();
  const [open, setOpen] = useState(false);
  if (segment.bends.length === 0) return null;
  return (
    <Disclosure label={`${drawWords.fields.bends} (${segment.bends.length})`} open={open} onToggle={setOpen}>
      {segment.bends.map((bend, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a bend has no name but its place in the row.
        <fieldset key={index} className="bend">
          <legend className="field-label">{drawWords.fields.bend(index + 1)}</legend>
          <div className="form-row">
            {axes.map((axis) => (
              <FigureField
                key={axis}
                label={drawWords.fields[axis]}
                value={bend[`${axis}Mm`]}
                unit={drawWords.units.mm}
                onChange={(mm) =>
                  make(
                    moveBend(map, {
                      segmentId: segment.id,
                      index,
                      at: { ...bend, [`${axis}Mm`]: mm ?? 0 },
                    }),
                    { label: 'edit.moveBend', joinKey: `${segment.id}.bend${index}.${axis}` },
                  )
                }
              />
            ))}
          </div>
          <Button
            weight="quiet"
            onClick={() =>
              make(removeBend(map, { segmentId: segment.id, index }), { label: 'edit.removeCorner' })
            }
          >
            {drawWords.fields.remove}
          </Button>
        </fieldset>
      ))}
    </Disclosure>
  );
}
