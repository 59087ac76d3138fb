import type { Caution } from '#core/map/kinds.ts';
import { cautionWords } from '../../language/words.ts';
import { Sign, type SignName } from '../../parts/index.ts';

export const cautionSigns: Readonly<Record<Caution, SignName>> = {
  airbag: 'airbag',
  'belt-tensioner': 'belt',
  'high-voltage': 'voltage',
  battery: 'battery',
  glass: 'glass',
  fuel: 'fuel',
  'raised-vehicle': 'raised',
  'one-use-clips': 'clip',
  'two-people': 'people',
};

/** Each caution of a panel as its own sign with its word. */
export function CautionSigns({
  cautions,
  signsOnly = false,
}: {
  readonly cautions: readonly Caution[];
  /** The words stand elsewhere at the same step; here they are only read aloud. */
  readonly signsOnly?: boolean;
}) {
  if (cautions.length === 0) return null;
  return (
    <ul className="caution-signs">
      {cautions.map((caution) => (
        <li key={caution} title={signsOnly ? cautionWords[caution] : undefined}>
          <Sign name={cautionSigns[caution]} size={18} />
          <span className={signsOnly ? 'only-read-aloud' : undefined}>{cautionWords[caution]}</span>
        </li>
      ))}
    </ul>
  );
}
