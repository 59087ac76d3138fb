import { useId } from 'react';
import { FieldFrame } from './field.tsx';

export interface SelectProps<T extends string> {
  readonly label: string;
  /** Null while nothing is chosen; `unchosen` then says so. */
  readonly value: T | null;
  readonly unchosen?: string;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
  readonly hint?: string;
  readonly trouble?: string;
  readonly disabled?: boolean;
}

/** One of several, from a list that drops down. */
export function Select<T extends string>({
  label,
  value,
  unchosen,
  options,
  onChange,
  hint,
  trouble,
  disabled,
}: SelectProps<T>) {
  const id = useId();
  return (
    <FieldFrame label={label} hint={hint} trouble={trouble} id={id}>
      <select
        id={id}
        className="input select"
        value={value ?? ''}
        disabled={disabled}
        aria-invalid={trouble ? true : undefined}
        aria-describedby={hint || trouble ? `${id}-hint` : undefined}
        onChange={(event) => onChange(event.target.value as T)}
      >
        {value === null ? (
          <option value="" disabled>
            {unchosen}
          </option>
        ) : null}
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </FieldFrame>
  );
}
