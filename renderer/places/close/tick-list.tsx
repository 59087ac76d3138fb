import { Checkbox } from '../../parts/index.ts';

/** Several of a list, ticked. */
export function TickList<T extends string>({
  label,
  words,
  ticked,
  onChange,
}: {
  readonly label: string;
  readonly words: Readonly<Record<T, string>>;
  readonly ticked: readonly T[];
  readonly onChange: (ticked: T[]) => void;
}) {
  return (
    <fieldset className="tick-list">
      <legend className="field-label">{label}</legend>
      {(Object.entries(words) as [T, string][]).map(([code, text]) => (
        <Checkbox
          key={code}
          label={text}
          checked={ticked.includes(code)}
          onChange={(on) => onChange(on ? [...ticked, code] : ticked.filter((each) => each !== code))}
        />
      ))}
    </fieldset>
  );
}
