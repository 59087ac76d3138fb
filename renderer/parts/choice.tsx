import { useId } from 'react';

/** One of a few, all in sight, as a row of buttons that answer to the arrow keys. */
export function Choice<T extends string>({
  label,
  value,
  options,
  onChange,
  hideLabel = false,
}: {
  readonly label: string;
  readonly value: T;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
  readonly hideLabel?: boolean;
}) {
  const name = useId();
  return (
    <fieldset className="choice">
      <legend className={hideLabel ? 'only-read-aloud' : 'field-label'}>{label}</legend>
      <div className="choice-row">
        {options.map((option) => (
          <label key={option.value} className="choice-option">
            <input
              type="radio"
              name={name}
              value={option.value}
              checked={option.value === value}
              onChange={() => onChange(option.value)}
            />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
