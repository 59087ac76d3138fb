import { drawWords } from '../../language/draw.ts';
import { Field } from '../../parts/index.ts';

/** The name of a thing. */
export function NameField({
  value,
  onChange,
  label = drawWords.fields.name,
}: {
  readonly value: string;
  readonly onChange: (value: string) => void;
  readonly label?: string;
}) {
  return <Field label={label} value={value} maxLength={120} onChange={onChange} />;
}
