import type { Caution } from '#core/map/kinds.ts';
import { cautionKeyWords, cautionSentences, findWords, grave } from '../../language/find.ts';
import { cautionWords } from '../../language/words.ts';
import { Button } from '../../parts/index.ts';
import { CautionFold } from './caution-fold.tsx';
import { cautionSigns } from './caution-signs.tsx';
import { useFind } from './find-context.ts';

const words = findWords.caution;

/**
 * The cautions of one opening, at its step: signs and key words, the whole text on opening it. Those that
 * can hurt are read and understood once in each job; after that one quiet line stays.
 */
export function StepCautions({
  cautions,
  shown,
  onShow,
}: {
  readonly cautions: readonly Caution[];
  /** Whether the whole text stands open. */
  readonly shown: boolean;
  readonly onShow: (shown: boolean) => void;
}) {
  const { session, cautionsRead } = useFind();
  if (cautions.length === 0) return null;
  const inOrder = [...cautions].sort((a, b) => Number(grave.has(b)) - Number(grave.has(a)));
  const unread = inOrder.filter((caution) => grave.has(caution) && !cautionsRead.has(caution));
  const quiet = unread.length === 0;
  return (
    // A group and no landmark: several steps with cautions may stand on one screen.
    <fieldset
      className={quiet ? 'step-cautions step-cautions-quiet' : 'step-cautions'}
      aria-label={words.title}
    >
      <CautionFold
        lines={inOrder.map((caution) => ({
          key: caution,
          sign: cautionSigns[caution],
          words: (
            <>
              <b>{cautionWords[caution]}</b>
              {quiet && grave.has(caution) ? null : `: ${cautionKeyWords[caution]}`}
            </>
          ),
        }))}
        shown={shown}
        onShow={onShow}
      >
        {inOrder.map((caution) => (
          <p key={caution}>
            <b>{cautionWords[caution]}.</b> {cautionSentences[caution]}
          </p>
        ))}
        {quiet ? null : (
          <Button
            aria-label={words.label(unread.map((caution) => cautionWords[caution]).join(', '))}
            onClick={() => {
              session.add({ type: 'caution-read', cautions: unread });
              onShow(false);
            }}
          >
            {words.read}
          </Button>
        )}
      </CautionFold>
    </fieldset>
  );
}
