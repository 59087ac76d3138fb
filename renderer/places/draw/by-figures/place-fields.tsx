import { figureWords } from '../../../language/by-figures.ts';
import { drawWords } from '../../../language/draw.ts';
import { Button } from '../../../parts/index.ts';
import { FigureField } from '../figure-field.tsx';
import { atZero, type Measured } from './body-frame.ts';

/** A place on the car as figures. */
export function PlaceFields({
  value,
  onChange,
  flat = false,
}: {
  readonly value: Measured;
  readonly onChange: (value: Measured) => void;
  /** Without a height: what is drawn only in plan. */
  readonly flat?: boolean;
}) {
  return (
    <div className="form-row by-figures-place">
      <FigureField
        label={figureWords.back}
        value={value.backMm}
        unit={drawWords.units.mm}
        onChange={(mm) => onChange({ ...value, backMm: mm ?? 0 })}
      />
      <FigureField
        label={figureWords.across}
        value={value.rightMm}
        unit={drawWords.units.mm}
        onChange={(mm) => onChange({ ...value, rightMm: mm ?? 0 })}
      />
      {flat ? null : (
        <FigureField
          label={figureWords.height}
          value={value.heightMm}
          unit={drawWords.units.mm}
          onChange={(mm) => onChange({ ...value, heightMm: mm ?? 0 })}
        />
      )}
    </div>
  );
}

/** Several places, each in a group of its own, with a way to add and take out. */
export function PlaceList({
  values,
  onChange,
  nameOf,
  more,
  flat = false,
}: {
  readonly values: readonly Measured[];
  readonly onChange: (values: readonly Measured[]) => void;
  readonly nameOf: (number: number) => string;
  readonly more: string;
  readonly flat?: boolean;
}) {
  return (
    <div className="by-figures-places">
      {values.map((value, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a place has no name but its number in the row.
        <fieldset key={index} className="bend">
          <legend className="field-label">{nameOf(index + 1)}</legend>
          <PlaceFields
            value={value}
            flat={flat}
            onChange={(next) => onChange(values.map((each, i) => (i === index ? next : each)))}
          />
          <Button
            weight="quiet"
            aria-label={figureWords.takeOutOf(nameOf(index + 1))}
            onClick={() => onChange(values.filter((_, i) => i !== index))}
          >
            {figureWords.takeOut}
          </Button>
        </fieldset>
      ))}
      <Button onClick={() => onChange([...values, values.at(-1) ?? atZero])}>{more}</Button>
    </div>
  );
}
