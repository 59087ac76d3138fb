import type { CircuitState } from '#core/circuit/car-state.ts';
import { cautionsRead } from '#core/job/cautions-read.ts';
import type { TestCaution } from '#core/job/closing-entries.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import { findWords } from '../../../language/find.ts';
import { nameOf } from '../../../language/name-of.ts';
import {
  planKeyWords,
  planSentence,
  refusalSentence,
  formCautionWords as words,
} from '../../../language/readings.ts';
import { Button, type SignName } from '../../../parts/index.ts';
import { CautionFold } from '../caution-fold.tsx';
import { useFind } from '../find-context.ts';
import { CurrentLimiter } from './current-limiter.tsx';
import type { FormCaution } from './form-cautions.ts';

/** What can hurt in a caution, to be read and understood once in each job; null where nothing does. */
const graveTests: Readonly<Record<FormCaution['code'], TestCaution | null>> = {
  'battery-on': 'live-wire',
  'end-plugged-in': null,
  'injection-refused': 'current-in',
  'injection-plan': 'current-in',
  'unit-pins': null,
  'hands-clear': 'moving-parts',
};

const signs: Readonly<Record<FormCaution['code'], SignName>> = {
  'battery-on': 'battery',
  'end-plugged-in': 'care',
  'injection-refused': 'voltage',
  'injection-plan': 'voltage',
  'unit-pins': 'care',
  'hands-clear': 'care',
};

/** What can hurt in these cautions and was not read in this job yet. */
export function unreadTests(
  cautions: readonly FormCaution[],
  standing: readonly JobEntry[],
): readonly TestCaution[] {
  const read = cautionsRead(standing).tests;
  const grave = cautions.flatMap(({ code }) => graveTests[code] ?? []);
  return [...new Set(grave)].filter((each) => !read.has(each));
}

/** The cautions of one test at its step: a few words each, the whole text and the limits of current on opening it. */
export function TestCautions({
  cautions,
  state,
  shown,
  onShow,
}: {
  readonly cautions: readonly FormCaution[];
  /** How the car stands for the test. */
  readonly state: CircuitState;
  /** Whether the whole text stands open. */
  readonly shown: boolean;
  readonly onShow: (shown: boolean) => void;
}) {
  const { open, session, standing, say } = useFind();
  if (cautions.length === 0 || !open.line) return null;
  const name = (nodeId: string): string => say(nameOf(open.map, nodeId));
  const unread = unreadTests(cautions, standing);
  const quiet = unread.length === 0;
  const current = cautions.some(({ code }) => code === 'injection-plan');
  const keyWords = (caution: FormCaution): string => cautionKeyWords(caution, name);
  return (
    <fieldset
      className={quiet ? 'step-cautions test-cautions step-cautions-quiet' : 'step-cautions test-cautions'}
      aria-label={words.label}
    >
      <CautionFold
        lines={cautions.map((caution) => ({
          key: caution.code,
          sign: signs[caution.code],
          words: keyWords(caution),
        }))}
        shown={shown}
        onShow={onShow}
      >
        {cautions.map((caution) => (
          <p key={caution.code}>{cautionSentence(caution, name)}</p>
        ))}
        <p>{words.precedence}</p>
        {current ? <CurrentLimiter circuit={open.line.circuit} state={state} /> : null}
        {quiet ? null : (
          <Button
            aria-label={words.understood(
              cautions
                .filter(({ code }) => graveTests[code] !== null)
                .map(keyWords)
                .join(', '),
            )}
            onClick={() => {
              session.add({ type: 'caution-read', cautions: [], tests: [...unread] });
              onShow(false);
            }}
          >
            {findWords.caution.read}
          </Button>
        )}
      </CautionFold>
    </fieldset>
  );
}

function cautionSentence(caution: FormCaution, name: (id: string) => string): string {
  switch (caution.code) {
    case 'battery-on':
      return words.batteryOn;
    case 'end-plugged-in':
      return words.endPluggedIn(caution.nodeIds.map(name).join(', '));
    case 'injection-refused':
      return refusalSentence(caution.reason, name);
    case 'injection-plan':
      return planSentence(caution.plan);
    case 'unit-pins':
      return words.unitPins;
    case 'hands-clear':
      return words.handsClear;
  }
}

function cautionKeyWords(caution: FormCaution, name: (id: string) => string): string {
  switch (caution.code) {
    case 'battery-on':
      return words.batteryOnKey;
    case 'end-plugged-in':
      return words.endPluggedInKey(caution.nodeIds.map(name).join(', '));
    case 'injection-refused':
      return `${words.noCurrentKey}: ${refusalSentence(caution.reason, name)}`;
    case 'injection-plan':
      return planKeyWords(caution.plan);
    case 'unit-pins':
      return words.unitPinsKey;
    case 'hands-clear':
      return words.handsClearKey;
  }
}
