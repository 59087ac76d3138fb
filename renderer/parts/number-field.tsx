import { useEffect, useId, useRef, useState } from 'react';
import { numberTrouble } from '../language/numbers.ts';
import { FieldFrame } from './field.tsx';
import { couldBeThousands, readNumber } from './read-number.ts';

export interface NumberFieldProps {
  readonly label: string;
  /** Null: nothing entered. */
  readonly value: number | null;
  readonly unit: string;
  readonly onChange: (value: number | null) => void;
  readonly min?: number;
  readonly max?: number;
  readonly hint?: string;
  readonly disabled?: boolean;
  /** Places after the point when shown; what is typed is kept as typed. */
  readonly places?: number;
  /** An empty field means: not known. */
  readonly mayBeEmpty?: boolean;
  /** What an empty field stands for, such as several figures that differ. */
  readonly placeholder?: string;
}

/**
 * A figure with its unit beside it. It keeps whatever was typed and says what is wrong with it; only a good
 * figure is handed on, and the form round it cannot be sent off with a bad one.
 */
export function NumberField({
  label,
  value,
  unit,
  onChange,
  min = Number.NEGATIVE_INFINITY,
  max = Number.POSITIVE_INFINITY,
  hint,
  disabled,
  places = 2,
  mayBeEmpty = true,
  placeholder,
}: NumberFieldProps) {
  const id = useId();
  const show = (number: number | null): string =>
    number === null ? '' : String(Number(number.toFixed(places)));
  const shown = show(value);
  const [text, setText] = useState(shown);
  const given = useRef(value);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => {
    if (value === given.current) return;
    given.current = value;
    setText(shown);
  }, [value, shown]);
  const isEmpty = (typed: string): boolean => typed.trim() === '';
  const isBad = (typed: string): boolean => {
    if (isEmpty(typed)) return !mayBeEmpty && placeholder === undefined;
    const number = readNumber(typed);
    return number === null || number < min || number > max;
  };
  // What stands here untouched is right, even where rounding shows it a hair beyond a limit.
  const bad = text !== shown && isBad(text);
  const trouble = bad ? numberTrouble(text, couldBeThousands(text), { min, max, mayBeEmpty }) : undefined;
  useEffect(() => input.current?.setCustomValidity(trouble ?? ''), [trouble]);
  const change = (typed: string): void => {
    setText(typed);
    if (isBad(typed) || (isEmpty(typed) && !mayBeEmpty)) return;
    given.current = isEmpty(typed) ? null : readNumber(typed);
    onChange(given.current);
  };
  return (
    <FieldFrame label={label} id={id} hint={hint} trouble={trouble}>
      <div className="number-row">
        <input
          id={id}
          ref={input}
          className="input number-input"
          inputMode="decimal"
          value={text}
          disabled={disabled}
          placeholder={placeholder}
          aria-invalid={bad ? true : undefined}
          aria-describedby={hint || trouble ? `${id}-hint` : undefined}
          onChange={(event) => change(event.target.value)}
          onInvalid={(event) => {
            // The sentence below says it already; the browser's own note would cover it.
            event.preventDefault();
            event.currentTarget.form?.querySelector<HTMLInputElement>('input:invalid')?.focus();
          }}
        />
        <span className="unit">{unit}</span>
      </div>
    </FieldFrame>
  );
}
