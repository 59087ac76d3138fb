import type { FormEvent } from 'react';
import {
  type OutlineKind,
  outlineKinds,
  type PanelKind,
  panelKinds,
  type RubSpotKind,
  rubSpotKinds,
} from '#core/map/kinds.ts';
import type { RubSpot } from '#core/map/records.ts';
import { figureWords } from '../../../language/by-figures.ts';
import { drawWords } from '../../../language/draw.ts';
import { outlineKindWords, panelKindWords, rubSpotKindWords } from '../../../language/words.ts';
import { Button, Checkbox, Choice, Field, Select } from '../../../parts/index.ts';
import { useDraft } from '../../../session/drafts.ts';
import { useDraw } from '../draw-context.ts';
import { FigureField } from '../figure-field.tsx';
import { optionsOf } from '../options-of.ts';
import { addedOutline, addedPanel, addedRubSpot } from './added-things.ts';
import { atZero, bodyFrame, type Measured, placeOf } from './body-frame.ts';
import { PlaceList } from './place-fields.tsx';
import { useAdding } from './use-adding.tsx';

const four: readonly Measured[] = [atZero, atZero, atZero, atZero];
const newPanel: {
  readonly kind: PanelKind;
  readonly name: string;
  readonly minutesOff: number;
  readonly minutesOn: number;
  readonly corners: readonly Measured[];
} = { kind: 'other', name: '', minutesOff: 5, minutesOn: 5, corners: four };
const newRubSpot: {
  readonly kind: RubSpotKind;
  readonly name: string;
  readonly shape: RubSpot['shape'];
  readonly places: readonly Measured[];
} = { kind: 'raw-edge', name: '', shape: 'point', places: [atZero] };
const newOutline: {
  readonly kind: OutlineKind;
  readonly name: string;
  readonly closed: boolean;
  readonly corners: readonly Measured[];
} = { kind: 'shell', name: '', closed: true, corners: four };

const tooFew = (needed: number, found: number) => ({ missing: figureWords.missing.corners(needed, found) });

/** A panel by the corners of the area it covers; one without corners has only its place in the order. */
export function AddPanelForm() {
  const { map } = useDraw();
  const { add, said } = useAdding();
  const [{ kind, name, minutesOff, minutesOn, corners }, change] = useDraft(map.id, 'add panel', newPanel);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const places = corners.map((corner) => placeOf(bodyFrame(map), corner));
    const added =
      places.length > 0 && places.length < 3
        ? tooFew(3, places.length)
        : addedPanel(map, { kind, name, corners: places, minutesOff, minutesOn }, Math.random);
    if (add(added, 'edit.addPanel')) change({ name: '' });
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <Select
        label={figureWords.kind}
        value={kind}
        options={optionsOf(panelKinds, panelKindWords)}
        onChange={(value) => change({ kind: value })}
      />
      <NameOfNew value={name} onChange={(value) => change({ name: value })} />
      <div className="form-row">
        <FigureField
          label={drawWords.fields.minutesOff}
          value={minutesOff}
          unit={drawWords.units.minutes}
          min={0}
          max={2_000}
          onChange={(minutes) => change({ minutesOff: minutes ?? 0 })}
        />
        <FigureField
          label={drawWords.fields.minutesOn}
          value={minutesOn}
          unit={drawWords.units.minutes}
          min={0}
          max={2_000}
          onChange={(minutes) => change({ minutesOn: minutes ?? 0 })}
        />
      </div>
      <PlaceList
        values={corners}
        onChange={(value) => change({ corners: value })}
        nameOf={figureWords.corner}
        more={figureWords.addCorner}
        flat
      />
      <Button type="submit">{figureWords.add}</Button>
      {said}
    </form>
  );
}

const shapes = ['point', 'line', 'area'] as const;
const needed = { point: 1, line: 2, area: 3 } as const;

/** A rub spot by one place, the places of a line or the corners of an area. */
export function AddRubSpotForm() {
  const { map } = useDraw();
  const { add, said } = useAdding();
  const [{ kind, name, shape, places }, change] = useDraft(map.id, 'add rub spot', newRubSpot);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const points = places.map((place) => placeOf(bodyFrame(map), place));
    const enough = points.length >= needed[shape];
    const added = enough
      ? addedRubSpot(map, { kind, name, shape, places: points }, Math.random)
      : tooFew(needed[shape], points.length);
    if (add(added, 'edit.addRubSpot')) change({ name: '' });
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <Select
        label={figureWords.kind}
        value={kind}
        options={optionsOf(rubSpotKinds, rubSpotKindWords)}
        onChange={(value) => change({ kind: value })}
      />
      <NameOfNew value={name} onChange={(value) => change({ name: value })} />
      <Choice
        label={figureWords.shape}
        value={shape}
        options={optionsOf(shapes, drawWords.shapes)}
        onChange={(next) => {
          // Places typed already stay; missing ones are added.
          const more = Math.max(0, needed[next] - places.length);
          change({
            shape: next,
            places: [
              ...(next === 'point' ? places.slice(0, 1) : places),
              ...Array.from({ length: more }, () => places.at(-1) ?? atZero),
            ],
          });
        }}
      />
      <PlaceList
        values={places}
        onChange={(value) => change({ places: value })}
        nameOf={figureWords.place}
        more={figureWords.addPlace}
      />
      <Button type="submit">{figureWords.add}</Button>
      {said}
    </form>
  );
}

/** An outline by its corners. */
export function AddOutlineForm() {
  const { map } = useDraw();
  const { add, said } = useAdding();
  const [{ kind, name, closed, corners }, change] = useDraft(map.id, 'add outline', newOutline);
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const places = corners.map((corner) => placeOf(bodyFrame(map), corner));
    const added =
      places.length < 2
        ? tooFew(2, places.length)
        : addedOutline(map, { kind, name, corners: places, closed }, Math.random);
    if (add(added, 'edit.addOutline')) change({ name: '' });
  };
  return (
    <form className="by-figures-form" onSubmit={send}>
      <Select
        label={figureWords.kind}
        value={kind}
        options={optionsOf(outlineKinds, outlineKindWords)}
        onChange={(value) => change({ kind: value })}
      />
      <NameOfNew value={name} onChange={(value) => change({ name: value })} />
      <Checkbox label={figureWords.closed} checked={closed} onChange={(value) => change({ closed: value })} />
      <PlaceList
        values={corners}
        onChange={(value) => change({ corners: value })}
        nameOf={figureWords.corner}
        more={figureWords.addCorner}
        flat
      />
      <Button type="submit">{figureWords.add}</Button>
      {said}
    </form>
  );
}

function NameOfNew({
  value,
  onChange,
}: {
  readonly value: string;
  readonly onChange: (name: string) => void;
}) {
  return (
    <Field
      label={figureWords.name}
      value={value}
      maxLength={120}
      hint={figureWords.nameHint}
      onChange={onChange}
    />
  );
}
