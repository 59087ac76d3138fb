import { useEffect, useRef, useState } from 'react';
import { drawWords } from '../../../language/draw.ts';
import { severalWords } from '../../../language/draw-several.ts';
import { Choice, Disclosure, Select, TextArea } from '../../../parts/index.ts';
import { FigureField } from '../figure-field.tsx';
import { sharedValue, shareOf } from './shared-value.ts';

interface Options<T extends string> {
  readonly label: string;
  /** What each of the picked things has. */
  readonly values: readonly T[];
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
}

/** One of several words for all picked things. */
export function SharedSelect<T extends string>({ label, values, options, onChange }: Options<T>) {
  const value = sharedValue(values);
  return (
    <Select<T | ''>
      label={label}
      value={value ?? ''}
      options={value === undefined ? [{ value: '', label: severalWords.differs }, ...options] : options}
      onChange={(next) => {
        if (next !== '') onChange(next);
      }}
    />
  );
}

/** One of a few words, all in sight, for all picked things. */
export function SharedChoice<T extends string>({ label, values, options, onChange }: Options<T>) {
  const value = sharedValue(values);
  return (
    <Choice<T | ''>
      label={value === undefined ? `${label} (${severalWords.differs})` : label}
      value={value ?? ''}
      options={options}
      onChange={(next) => {
        if (next !== '') onChange(next);
      }}
    />
  );
}

/** One figure for all picked things. */
export function SharedFigure({
  values,
  ...rest
}: {
  readonly label: string;
  readonly values: readonly (number | null)[];
  readonly unit: string;
  readonly onChange: (value: number | null) => void;
  readonly min?: number;
  readonly max?: number;
  readonly hint?: string;
  readonly places?: number;
  readonly mayBeEmpty?: boolean;
}) {
  const value = sharedValue(values);
  return <FigureField value={value ?? null} differs={value === undefined} {...rest} />;
}

/** Yes or no for all picked things; neither where they differ, until it is pressed. */
export function SharedTick({
  label,
  share,
  onChange,
}: {
  readonly label: string;
  readonly share: 'all' | 'some' | 'none';
  readonly onChange: (on: boolean) => void;
}) {
  const box = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (box.current) box.current.indeterminate = share === 'some';
  }, [share]);
  return (
    <label className="checkbox">
      <input
        ref={box}
        type="checkbox"
        checked={share === 'all'}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span>
        {label}
        {share === 'some' ? <span className="quiet"> ({severalWords.differs})</span> : null}
      </span>
    </label>
  );
}

/** More ticks than this are folded away until wanted. */
const mostTicksInSight = 12;

/** Several ticks, each for all picked things. */
export function SharedTicks<T extends string>({
  label,
  lists,
  options,
  onChange,
}: {
  readonly label: string;
  readonly lists: readonly (readonly T[])[];
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (word: T, on: boolean) => void;
}) {
  const [open, setOpen] = useState(false);
  if (options.length === 0) return null;
  const ticks = options.map((option) => (
    <SharedTick
      key={option.value}
      label={option.label}
      share={shareOf(lists, option.value)}
      onChange={(on) => onChange(option.value, on)}
    />
  ));
  if (options.length <= mostTicksInSight) {
    return (
      <fieldset className="picks">
        <legend className="field-label">{label}</legend>
        {ticks}
      </fieldset>
    );
  }
  const ticked = options.filter((option) => shareOf(lists, option.value) !== 'none').length;
  return (
    <Disclosure label={`${label} (${ticked})`} open={open} onToggle={setOpen}>
      <fieldset className="picks" aria-label={label}>
        {ticks}
      </fieldset>
    </Disclosure>
  );
}

/** One note for all of them; where each has its own, none of them is written over. */
export function SharedNote({
  values,
  onChange,
}: {
  readonly values: readonly string[];
  readonly onChange: (note: string) => void;
}) {
  const value = sharedValue(values);
  if (value === undefined) return <p className="quiet">{severalWords.notesDiffer}</p>;
  return <TextArea label={drawWords.fields.note} value={value} maxLength={4_000} onChange={onChange} />;
}
