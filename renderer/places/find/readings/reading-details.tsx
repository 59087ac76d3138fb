import { useId, useState } from 'react';
import { handMeter } from '#core/circuit/default-meter-table.ts';
import { readingWords } from '../../../language/readings.ts';
import { Field, Sign } from '../../../parts/index.ts';
import { useFind } from '../find-context.ts';
import { CarStateChoice } from './car-state-choice.tsx';
import { MeterChoice } from './meter-choice.tsx';
import { meterTests, type ReadingForm } from './reading-form.ts';
import { stateLine } from './reading-line.ts';

const words = readingWords.form;
type Part = 'car' | 'meter';

/**
 * How the car stood, and with which meter: said in one line, and changed on opening it. What is apart is
 * the reading itself when a plug is pulled, so there it stands open from the start.
 */
export function ReadingDetails({
  form,
  onChange,
}: {
  readonly form: ReadingForm;
  readonly onChange: (part: Partial<ReadingForm>) => void;
}) {
  const view = useFind();
  const id = useId();
  const [opened, setOpened] = useState<Part | null>(null);
  const [ownMeter, setOwnMeter] = useState(false);
  const { test, note } = form;
  const measured = meterTests.has(test);
  const carOpen = opened === 'car' || test === 'symptom';
  const toggle = (part: Part): void => setOpened(opened === part ? null : part);
  const kept = [measured ? (form.meter?.name ?? handMeter.name) : '', note].filter((each) => each !== '');
  const head = (part: Part, label: string, said: string, open: boolean) => (
    <button
      type="button"
      className={`reading-detail reading-detail-${part}`}
      aria-expanded={open}
      aria-controls={`${id}-${part}`}
      onClick={() => toggle(part)}
    >
      <span className="reading-detail-words">
        <span className="quiet">{label}</span> {said}
      </span>
      <Sign name={open ? 'up' : 'down'} size={18} />
    </button>
  );
  const car = (
    <div id={`${id}-car`} className="reading-detail-whole" hidden={!carOpen}>
      {carOpen ? <CarStateChoice state={form.state} onChange={(state) => onChange({ state })} /> : null}
    </div>
  );
  const pulled = test === 'symptom';
  return (
    <div className="reading-details">
      {pulled ? car : head('car', words.carShort, stateLine(form.state, view), carOpen)}
      {test === 'function'
        ? null
        : head('meter', measured ? words.meterAndNote : words.note, kept.join('. '), opened === 'meter')}
      {pulled ? null : car}
      <div id={`${id}-meter`} className="reading-detail-whole reading-more" hidden={opened !== 'meter'}>
        {opened === 'meter' ? (
          <>
            <Field
              label={words.note}
              value={note}
              maxLength={4_000}
              onChange={(text) => onChange({ note: text })}
            />
            {measured ? (
              <MeterChoice
                meter={form.meter}
                opened={ownMeter}
                onOpen={setOwnMeter}
                onChange={(meter) => onChange({ meter })}
              />
            ) : null}
          </>
        ) : null}
      </div>
    </div>
  );
}
