import { type FormEvent, useState } from 'react';
import { planDistanceMm } from '#core/geometry/point.ts';
import { setScale } from '#core/map/commands/set-scale.ts';
import { drawWords } from '../../language/draw.ts';
import { thousandsTrouble } from '../../language/numbers.ts';
import { Button, couldBeThousands, Field, Figure, readNumber } from '../../parts/index.ts';
import type { ScalePoints } from '../../tools/scale/scale-tool.ts';
import { useDraw } from './draw-context.ts';
import type { Drawing } from './use-drawing.ts';

/** Asks for the true distance once both places are pressed. */
export function ScaleForm({ drawing, points }: { readonly drawing: Drawing; readonly points: ScalePoints }) {
  const { map, make } = useDraw();
  const [text, setText] = useState('');
  const [trouble, setTrouble] = useState<string | undefined>();
  const { from, to } = points;
  if (!from || !to) return null;
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const distanceMm = readNumber(text);
    if (distanceMm === null || distanceMm <= 0) {
      setTrouble(couldBeThousands(text) ? thousandsTrouble(text) : drawWords.scale.keepsFrom);
      return;
    }
    if (make(setScale(map, { from, to, distanceMm }), { label: 'edit.setScale' })) drawing.take('select');
  };
  return (
    <form className="scale-form" onSubmit={send} aria-label={drawWords.scale.title}>
      <p>
        {drawWords.scale.drawn}{' '}
        <Figure value={planDistanceMm(from, to).toFixed(0)} unit={drawWords.units.mm} />
      </p>
      <Field
        label={`${drawWords.scale.field}, ${drawWords.units.mm}`}
        value={text}
        inputMode="decimal"
        autoFocus
        onChange={(value) => {
          setText(value);
          setTrouble(undefined);
        }}
        {...(trouble ? { trouble } : { hint: drawWords.scale.effect })}
      />
      <div className="button-row">
        <Button type="submit" weight="main">
          {drawWords.scale.set}
        </Button>
        <Button onClick={() => drawing.take('scale')}>{drawWords.scale.again}</Button>
      </div>
    </form>
  );
}
