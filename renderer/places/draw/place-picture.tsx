import { type FormEvent, useState } from 'react';
import type { Underlay } from '#core/map/records.ts';
import type { UnderlayId } from '#core/quantity/id.ts';
import { drawWords } from '../../language/draw.ts';
import { pictureWords } from '../../language/draw-first.ts';
import { thousandsTrouble } from '../../language/numbers.ts';
import { Button, Choice, couldBeThousands, Field, readNumber, Select } from '../../parts/index.ts';
import type { ScalePoints } from '../../tools/scale/scale-tool.ts';
import { BringPicture } from './bring-picture.tsx';
import { useDraw } from './draw-context.ts';
import { optionsOf } from './options-of.ts';
import { type Lie, placedPicture } from './placed-picture.ts';

const hows = ['distance', 'places'] as const;
const lies = ['drawn', 'along', 'across'] as const;

/** With the picture action in hand: which picture, and after two presses what is known of the two places. */
export function PlacePicture({ points }: { readonly points: ScalePoints }) {
  const { map, open, session } = useDraw();
  const underlays = [...map.underlays.values()].sort((a, b) => a.order - b.order);
  const [first] = underlays;
  if (!first) return <BringPicture />;
  const picked = underlays.find((each) => open.selection.includes(each.id)) ?? first;
  return (
    <>
      {underlays.length > 1 ? (
        <Select
          label={pictureWords.which}
          value={picked.id as string}
          options={underlays.map((each) => ({ value: each.id as string, label: each.name }))}
          onChange={(id) => session.select([id as UnderlayId])}
        />
      ) : null}
      <BringPicture label={pictureWords.another} />
      {points.from && points.to ? (
        <KnownForm
          key={`${points.from.xMm} ${points.to.xMm}`}
          underlay={picked}
          pressed={{ from: points.from, to: points.to }}
        />
      ) : null}
    </>
  );
}

function KnownForm({
  underlay,
  pressed,
}: {
  readonly underlay: Underlay;
  readonly pressed: Parameters<typeof placedPicture>[2];
}) {
  const { map, make, takeTool } = useDraw();
  const [how, setHow] = useState<(typeof hows)[number]>('distance');
  const [lie, setLie] = useState<Lie>('along');
  const [texts, setTexts] = useState<readonly string[]>(['', '', '', '', '']);
  const [trouble, setTrouble] = useState<string | null>(null);
  const change = (index: number) => (text: string) => {
    setTexts(texts.with(index, text));
    setTrouble(null);
  };
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const [distanceMm, x1, y1, x2, y2] = texts.map(readNumber);
    const known =
      how === 'distance'
        ? typeof distanceMm === 'number' && distanceMm > 0
          ? ({ how, distanceMm, lie } as const)
          : null
        : [x1, y1, x2, y2].every((mm) => typeof mm === 'number')
          ? ({
              how,
              from: { xMm: x1 as number, yMm: y1 as number },
              to: { xMm: x2 as number, yMm: y2 as number },
            } as const)
          : null;
    if (!known) {
      const asked = how === 'distance' ? texts.slice(0, 1) : texts.slice(1);
      const twofold = asked.find(couldBeThousands);
      setTrouble(twofold ? thousandsTrouble(twofold) : pictureWords.wrong);
      return;
    }
    const placed = make(placedPicture(map, underlay, pressed, known), {
      label: 'edit.placeUnderlay',
      select: [underlay.id],
    });
    if (placed) takeTool('select');
  };
  const field = (index: number, label: string) => (
    <Field
      label={`${label}, ${drawWords.units.mm}`}
      value={texts[index] ?? ''}
      inputMode="decimal"
      onChange={change(index)}
    />
  );
  return (
    <form className="known-form" onSubmit={send} aria-label={pictureWords.place}>
      <Choice
        label={pictureWords.how}
        value={how}
        options={optionsOf(hows, pictureWords.hows)}
        onChange={setHow}
      />
      {how === 'distance' ? (
        <>
          {field(0, pictureWords.distance)}
          <Choice
            label={pictureWords.lie}
            value={lie}
            options={optionsOf(lies, pictureWords.lies)}
            onChange={setLie}
          />
        </>
      ) : (
        <div className="form-row">
          {field(1, `${pictureWords.first}: ${drawWords.fields.x}`)}
          {field(2, `${pictureWords.first}: ${drawWords.fields.y}`)}
          {field(3, `${pictureWords.second}: ${drawWords.fields.x}`)}
          {field(4, `${pictureWords.second}: ${drawWords.fields.y}`)}
        </div>
      )}
      {trouble ? (
        <p className="field-trouble" role="alert">
          {trouble}
        </p>
      ) : null}
      <div className="button-row">
        <Button type="submit" weight="main">
          {pictureWords.set}
        </Button>
        <Button onClick={() => takeTool('underlay')}>{pictureWords.again}</Button>
      </div>
    </form>
  );
}
