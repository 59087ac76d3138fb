import { useEffect, useId, useRef, useState } from 'react';
import { drawWords } from '../../language/draw.ts';
import { severalWords } from '../../language/draw-several.ts';
import { FieldFrame, readNumber } from '../../parts/index.ts';

/** A figure that keeps whatever was typed and says what is wrong with it; only a good one is handed on. */
export function FigureField({
  label,
  value,
  unit,
  onChange,
  min = -50_000,
  max = 50_000,
  hint,
  places = 1,
  mayBeEmpty = false,
  differs = false,
}: {
  readonly label: string;
  readonly value: number | null;
  readonly unit: string;
  readonly onChange: (value: number | null) => void;
  readonly min?: number;
  readonly max?: number;
  readonly hint?: string;
  readonly places?: number;
  /** An empty field means: not known. */
  readonly mayBeEmpty?: boolean;
  /** Several things with figures of their own: empty until one is typed for all of them. */
  readonly differs?: boolean;
}) {
  const id = useId();
  const show = (number: number | null): string =>
    number === null ? '' : String(Number(number.toFixed(places)));
  const [text, setText] = useState(show(value));
  const given = useRef(value);
  const shown = show(value);
  useEffect(() => {
    if (value === given.current) return;
    given.current = value;
    setText(shown);
  }, [value, shown]);
  const problemOf = (typed: string): boolean => {
    if (typed.trim() === '') return !mayBeEmpty && !differs;
    const number = readNumber(typed);
    return number === null || number < min || number > max;
  };
  // What stands here untouched is right, even where rounding shows it a hair beyond a limit.
  const bad = text !== shown && problemOf(text);
  const change = (typed: string): void => {
    setText(typed);
    if (problemOf(typed) || (typed.trim() === '' && !mayBeEmpty)) return;
    given.current = typed.trim() === '' ? null : readNumber(typed);
    onChange(given.current);
  };
  const trouble = bad ? drawWords.figureTrouble(min, max, mayBeEmpty) : undefined;
  return (
    <FieldFrame label={label} id={id} hint={hint} trouble={trouble}>
      <div className="number-row">
        <input
          id={id}
          className="input number-input"
          inputMode="decimal"
          value={text}
          placeholder={differs ? severalWords.differs : undefined}
          aria-invalid={bad ? true : undefined}
          aria-describedby={hint || trouble ? `${id}-hint` : undefined}
          onChange={(event) => change(event.target.value)}
        />
        <span className="unit">{unit}</span>
      </div>
    </FieldFrame>
  );
}
