import type { FormEvent } from 'react';
import { moveThings } from '#core/map/commands/move-things.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { drawWords } from '../../../language/draw.ts';
import { nameOf } from '../../../language/name-of.ts';
import { Button } from '../../../parts/index.ts';
import { useDraft } from '../../../session/drafts.ts';
import { useDraw } from '../draw-context.ts';
import { FigureField } from '../figure-field.tsx';
import { useAdding } from './use-adding.tsx';

const noMove = { backMm: 0, rightMm: 0 };

/** Moves what is picked by so much rearward and to the right, or deletes it. */
export function MoveForm() {
  const { map, open, make, remove } = useDraw();
  const { add, say, said } = useAdding();
  const [{ backMm, rightMm }, change] = useDraft(map.id, 'move', noMove);
  const { selection } = open;
  const send = (event: FormEvent): void => {
    event.preventDefault();
    if (backMm === 0 && rightMm === 0) add({ missing: figureWords.missing.noMove }, '');
    else {
      const patch = moveThings(map, { ids: selection, dxMm: backMm, dyMm: rightMm });
      if (make(patch, { label: 'edit.moveThings' })) say(figureWords.moved);
    }
  };
  if (selection.length === 0) return <p className="quiet">{figureWords.nothingPicked}</p>;
  return (
    <form className="by-figures-form" onSubmit={send}>
      <p>{figureWords.picked(selection.map((id) => nameOf(map, id)))}</p>
      <div className="form-row">
        <FigureField
          label={figureWords.byBack}
          value={backMm}
          unit={drawWords.units.mm}
          onChange={(mm) => change({ backMm: mm ?? 0 })}
        />
        <FigureField
          label={figureWords.byRight}
          value={rightMm}
          unit={drawWords.units.mm}
          onChange={(mm) => change({ rightMm: mm ?? 0 })}
        />
      </div>
      <div className="button-row">
        <Button type="submit">{figureWords.move}</Button>
        <Button onClick={() => remove(selection)}>{figureWords.remove}</Button>
      </div>
      {said}
    </form>
  );
}
