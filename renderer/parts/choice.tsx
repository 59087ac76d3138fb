import { useId } from 'react';

/** One of a few, all in sight, as a row of buttons that answer to the arrow keys. */
export function Choice<T extends string>({
  label,
  value,
  options,
  onChange,
  hideLabel = false,
  trouble,
}: {
  readonly label: string;
  /** Null while nothing is chosen. */
  readonly value: T | null;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly onChange: (value: T) => void;
  readonly hideLabel?: boolean;
  /** What is wrong, as a sentence. */
  readonly trouble?: string | undefined;
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
      {trouble ? (
        <p className="field-trouble" role="alert">
          {trouble}
        </p>
      ) : null}
    </fieldset>
  );
}
