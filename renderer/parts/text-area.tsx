import { useId } from 'react';
import { FieldFrame } from './field.tsx';

/** Several lines of text. */
export function TextArea({
  label,
  value,
  onChange,
  rows = 3,
  hint,
  trouble,
  maxLength,
}: {
  readonly label: string;
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly rows?: number;
  readonly hint?: string;
  readonly trouble?: string;
  readonly maxLength?: number;
}) {
  const id = useId();
  return (
    <FieldFrame label={label} hint={hint} trouble={trouble} id={id}>
      <textarea
        id={id}
        className="input text-area"
        rows={rows}
        value={value}
        maxLength={maxLength}
        aria-describedby={hint || trouble ? `${id}-hint` : undefined}
        onChange={(event) => onChange(event.target.value)}
      />
    </FieldFrame>
  );
}
