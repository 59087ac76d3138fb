import { type FormEvent, useState } from 'react';
import type { SegmentId } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { loomWords } from '../../language/draw-loom.ts';
import { thousandsTrouble } from '../../language/numbers.ts';
import { Button, couldBeThousands, Field, readNumber } from '../../parts/index.ts';
import { besideEdit } from '../../tools/beside/beside-tool.ts';
import { useDraw } from './draw-context.ts';

/** How far beside the pressed run the new one lies, as a figure instead of a pull. */
export function BesideForm({ segmentId }: { readonly segmentId: SegmentId }) {
  const { map, make, takeTool } = useDraw();
  const [text, setText] = useState('');
  const [trouble, setTrouble] = useState(false);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const offsetMm = readNumber(text);
    if (offsetMm === null || !Number.isFinite(offsetMm) || offsetMm === 0) {
      setTrouble(true);
      return;
    }
    const { patch, label, select } = besideEdit({ map, chance: Math.random }, segmentId, offsetMm);
    if (make(patch, { label, ...(select ? { select } : {}) })) takeTool('beside');
  };
  return (
    <form className="scale-form" onSubmit={send} aria-label={drawWords.tools.beside}>
      <Field
        label={`${loomWords.besideOffset}, ${drawWords.units.mm}`}
        value={text}
        inputMode="text"
        onChange={(next) => {
          setText(next);
          setTrouble(false);
        }}
        {...(trouble
          ? { trouble: couldBeThousands(text) ? thousandsTrouble(text) : loomWords.besideWrong }
          : {})}
      />
      <div className="button-row">
        <Button type="submit" weight="main">
          {loomWords.besideLay}
        </Button>
      </div>
    </form>
  );
}
