import { useEffect, useId, useRef, useState } from 'react';
import { FieldFrame } from './field.tsx';

export interface NumberFieldProps {
  readonly label: string;
  /** Null: nothing entered. */
  readonly value: number | null;
  readonly unit: string;
  readonly onChange: (value: number | null) => void;
  readonly min?: number;
  readonly max?: number;
  readonly hint?: string;
  readonly trouble?: string;
  readonly disabled?: boolean;
  /** Places after the point when shown; what is typed is kept as typed. */
  readonly places?: number;
}

/** Reads what a person types: a point or a comma, spaces ignored. Null when it is no number. */
export function readNumber(text: string): number | null {
  const plain = text.replaceAll(/\s/g, '').replace(',', '.');
  if (!/^-?(\d+\.?\d*|\.\d+)$/.test(plain)) return null;
  return Number(plain);
}

/** A figure with its unit beside it. Gives a number as soon as what is typed is one within bounds. */
export function NumberField({
  label,
  value,
  unit,
  onChange,
  min = Number.NEGATIVE_INFINITY,
  max = Number.POSITIVE_INFINITY,
  hint,
  trouble,
  disabled,
  places = 2,
}: NumberFieldProps) {
  const id = useId();
  const show = (number: number | null): string =>
    number === null ? '' : String(Number(number.toFixed(places)));
  const [text, setText] = useState(show(value));
  const given = useRef(value);
  useEffect(() => {
    if (value === given.current) return;
    given.current = value;
    setText(value === null ? '' : String(Number(value.toFixed(places))));
  }, [value, places]);
  const typed = readNumber(text);
  const bad = text !== '' && (typed === null || typed < min || typed > max);
  const change = (next: string): void => {
    setText(next);
    const number = readNumber(next);
    if (next.trim() === '') {
      given.current = null;
      onChange(null);
    } else if (number !== null && number >= min && number <= max) {
      given.current = number;
      onChange(number);
    }
  };
  return (
    <FieldFrame label={label} hint={hint} trouble={trouble} id={id}>
      <div className="number-row">
        <input
          id={id}
          className="input number-input"
          inputMode="decimal"
          value={text}
          disabled={disabled}
          aria-invalid={bad || trouble ? true : undefined}
          aria-describedby={hint || trouble ? `${id}-hint` : undefined}
          onChange={(event) => change(event.target.value)}
          onBlur={() => setText(bad ? show(value) : text)}
        />
        <span className="unit">{unit}</span>
      </div>
    </FieldFrame>
  );
}
