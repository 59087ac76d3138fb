import type { EntryOf } from '#core/job/job-document.ts';
import { looksSound, soundCurrent } from '#core/job/looks-sound.ts';
import { meterOf } from '#core/job/meter-record.ts';
import type { ProofItem } from '#core/job/proof-checklist.ts';
import type { Reading } from '#core/job/reading.ts';
import { closeWords, proofCheckWords } from '../../language/close.ts';
import { Button, Checkbox, Choice, NumberField } from '../../parts/index.ts';
import { useDraft } from '../../session/drafts.ts';
import { useFind } from '../find/find-context.ts';
import { asksSomething, nothingTyped, readingAfter, type TypedAfter } from './reading-after.ts';

const words = closeWords.proof;

/** A test of before, taken again: a figure where it has one, else good or still bad. */
export function TryAgain({
  item,
  cause,
}: {
  readonly item: ProofItem;
  readonly cause: EntryOf<'finding'> | null;
}) {
  const { open, session } = useFind();
  const { check, repeats, expected } = item;
  const [typed, setTyped, drop] = useDraft(open.job.id, `again ${check} ${repeats?.id ?? ''}`, nothingTyped);
  const isDrop = check === 'reading' && repeats?.reading.test === 'drop';
  const reading = readingAfter(item, cause, typed);
  const answered = isDrop ? typed.figure !== null : reading !== null;
  const sound = isDrop
    ? typed.figure === null
      ? null
      : soundCurrent(expected, typed.figure)
    : reading && check === 'reading'
      ? looksSound(expected, reading, meterOf(repeats?.meter))
      : null;
  const untold = typed.tried === null && typed.changed === null;
  const moved = check !== 'move' || untold || ((typed.tried ?? 0) > 0 && typed.changed === 0);
  const canBeGood = (!asksSomething(item) || answered) && moved && sound !== false;
  const name = proofCheckWords[check];
  const enter = (good: boolean): void => {
    session.add({
      type: 'proof',
      check,
      ...(repeats && check === 'reading' ? { repeats: repeats.id } : {}),
      ...(reading && repeats ? { reading, state: repeats.state } : {}),
      ...(repeats?.meter && reading ? { meter: repeats.meter } : {}),
      ...(isDrop && typed.figure !== null ? { amps: typed.figure } : {}),
      good,
      note: '',
    });
    drop();
  };
  return (
    <div className="try-again">
      {check === 'move' ? (
        <MoveFields typed={typed} onChange={setTyped} />
      ) : check === 'reading' && repeats ? (
        <FigureFields
          test={repeats.reading.test}
          typed={typed}
          flowing={isDrop && sound === false}
          onChange={setTyped}
        />
      ) : null}
      {sound === false ? <p className="field-trouble">{isDrop ? words.currentBad : words.unlike}</p> : null}
      <div className="button-row">
        <Button large aria-label={`${words.good}: ${name}`} disabled={!canBeGood} onClick={() => enter(true)}>
          {words.good}
        </Button>
        <Button large aria-label={`${words.bad}: ${name}`} onClick={() => enter(false)}>
          {words.bad}
        </Button>
      </div>
    </div>
  );
}

interface FieldsProps {
  readonly typed: TypedAfter;
  readonly onChange: (typed: TypedAfter) => void;
}

const unitOf: Partial<Readonly<Record<Reading['test'], string>>> = {
  ohms: 'Ω',
  volts: 'V',
  capacitance: 'pF',
  drop: 'A',
};

function FigureFields({
  test,
  typed,
  flowing,
  onChange,
}: FieldsProps & { readonly test: Reading['test']; readonly flowing: boolean }) {
  if (test === 'beep') {
    return (
      <Choice<'beeps' | 'silent' | 'unsaid'>
        label={words.beeper}
        value={typed.beeps === null ? 'unsaid' : typed.beeps ? 'beeps' : 'silent'}
        options={[
          { value: 'beeps', label: words.beeps },
          { value: 'silent', label: words.silent },
        ]}
        onChange={(said) => onChange({ ...typed, beeps: said === 'beeps' })}
      />
    );
  }
  const unit = unitOf[test];
  if (unit === undefined) return null;
  const atLeastNothing = test === 'volts' ? {} : { min: 0 };
  return (
    <>
      <NumberField
        label={test === 'drop' ? words.current : words.figure}
        value={typed.figure}
        unit={unit}
        disabled={typed.openLine}
        places={3}
        {...atLeastNothing}
        {...(test === 'drop' ? { max: 20 } : {})}
        onChange={(figure) => onChange({ ...typed, figure })}
      />
      {test === 'ohms' ? (
        <Checkbox
          label={words.openLine}
          checked={typed.openLine}
          onChange={(openLine) => onChange({ ...typed, openLine })}
        />
      ) : null}
      {flowing ? (
        <NumberField
          label={words.millivolts}
          value={typed.millivolts}
          unit="mV"
          places={2}
          onChange={(millivolts) => onChange({ ...typed, millivolts })}
        />
      ) : null}
    </>
  );
}

function MoveFields({ typed, onChange }: FieldsProps) {
  return (
    <>
      <NumberField
        label={words.changed}
        value={typed.changed}
        unit=""
        min={0}
        max={10_000}
        places={0}
        onChange={(changed) => onChange({ ...typed, changed })}
      />
      <NumberField
        label={words.tried}
        value={typed.tried}
        unit=""
        min={1}
        max={10_000}
        places={0}
        onChange={(tried) => onChange({ ...typed, tried })}
      />
    </>
  );
}
