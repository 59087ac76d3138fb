import { intakeWords } from '../../language/intake.ts';
import { Checkbox } from '../../parts/index.ts';

/** Which of some answers hold, each to be ticked; or none of them, which is an answer as well. */
export function ToldPicks<T extends string>({
  label,
  words,
  picked,
  onChange,
}: {
  readonly label: string;
  readonly words: Readonly<Record<T, string>>;
  /** Undefined: nobody asked. */
  readonly picked: readonly T[] | undefined;
  readonly onChange: (picked: T[] | undefined) => void;
}) {
  const all = Object.keys(words) as T[];
  return (
    <fieldset className="told-picks">
      <legend className="field-label">{label}</legend>
      <div className="told-picks-grid">
        {all.map((word) => (
          <Checkbox
            key={word}
            label={words[word]}
            checked={picked?.includes(word) ?? false}
            onChange={(ticked) =>
              // In the order asked, so that the same answers are the same record.
              onChange(all.filter((each) => (each === word ? ticked : picked?.includes(each))))
            }
          />
        ))}
        <Checkbox
          label={intakeWords.noneOfThese}
          checked={picked?.length === 0}
          onChange={(ticked) => onChange(ticked ? [] : undefined)}
        />
      </div>
    </fieldset>
  );
}
