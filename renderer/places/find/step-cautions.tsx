import type { Caution } from '#core/map/kinds.ts';
import { cautionSentences, findWords, grave } from '../../language/find.ts';
import { cautionWords } from '../../language/words.ts';
import { Button, Notice } from '../../parts/index.ts';
import { cautionSigns } from './caution-signs.tsx';
import { useFind } from './find-context.ts';

/** The cautions of one opening in words. Those that can hurt are acknowledged once in each job. */
export function StepCautions({ cautions }: { readonly cautions: readonly Caution[] }) {
  const { cautionsRead, readCaution } = useFind();
  const shown = cautions.filter((caution) => !grave.has(caution) || !cautionsRead.has(caution));
  if (shown.length === 0) return null;
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
    </div>
  );
}
