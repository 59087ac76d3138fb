import type { Caution } from '#core/map/kinds.ts';
import { cautionSentences, findWords, grave } from '../../language/find.ts';
import { cautionWords } from '../../language/words.ts';
import { Button, Notice, Sign } from '../../parts/index.ts';
import { cautionSigns } from './caution-signs.tsx';
import { useFind } from './find-context.ts';

/** Care for parts and paint, not for people: one line will do. */
const mild: ReadonlySet<Caution> = new Set(['one-use-clips', 'two-people']);

/** The cautions of one opening in words. Those that can hurt are acknowledged once in each job. */
export function StepCautions({ cautions }: { readonly cautions: readonly Caution[] }) {
  const { cautionsRead, readCaution } = useFind();
  const inOrder = [...cautions].sort((a, b) => Number(grave.has(b)) - Number(grave.has(a)));
  const shown = inOrder.filter((caution) => !mild.has(caution) && !cautionsRead.has(caution));
  const lines = inOrder.filter((caution) => mild.has(caution));
  if (shown.length + lines.length === 0) return null;
  return (
    <div className="step-cautions">
      {shown.map((caution) => (
        <Notice
          key={caution}
          tone="caution"
          sign={cautionSigns[caution]}
          title={cautionWords[caution]}
          actions={
            grave.has(caution) ? (
              <Button
                aria-label={findWords.caution.label(cautionWords[caution])}
                onClick={() => readCaution(caution)}
              >
                {findWords.caution.read}
              </Button>
            ) : undefined
          }
        >
          {cautionSentences[caution]}
        </Notice>
      ))}
      {lines.map((caution) => (
        <p key={caution} className="caution-line">
          <Sign name={cautionSigns[caution]} size={20} />
          {cautionSentences[caution]}
        </p>
      ))}
    </div>
  );
}
