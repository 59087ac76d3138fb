import { type InputHTMLAttributes, type ReactNode, useId } from 'react';

/** Label, hint and trouble round any one control. */
export function FieldFrame({
  label,
  hint,
  trouble,
  id,
  children,
}: {
  readonly label: string;
  readonly hint?: string | undefined;
  readonly trouble?: string | undefined;
  readonly id: string;
  readonly children: ReactNode;
}) {
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      {children}
      {hint && !trouble ? (
        <p className="field-hint" id={`${id}-hint`}>
          {hint}
        </p>
      ) : null}
      {trouble ? (
        <p className="field-trouble" id={`${id}-hint`} role="alert">
          {trouble}
        </p>
      ) : null}
    </div>
  );
}

export interface FieldProps extends Omit<InputHTMLAttributes<HTMLInputElement>, 'onChange' | 'value'> {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly hint?: string;
  /** What is wrong with the value, as a sentence. */
  readonly trouble?: string;
}

/** One line of text. */
export function Field({ label, value, onChange, hint, trouble, id, className = '', ...rest }: FieldProps) {
  const ownId = useId();
  const fieldId = id ?? ownId;
  return (
    <FieldFrame label={label} hint={hint} trouble={trouble} id={fieldId}>
      <input
        id={fieldId}
        className={`input ${className}`}
        value={value}
        aria-invalid={trouble ? true : undefined}
        aria-describedby={hint || trouble ? `${fieldId}-hint` : undefined}
        onChange={(event) => onChange(event.target.value)}
        {...rest}
      />
    </FieldFrame>
  );
}
