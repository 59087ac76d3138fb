import { type FormEvent, useEffect, useRef, useState } from 'react';
import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import { findWords } from '../../../language/find.ts';
import { nameOf } from '../../../language/name-of.ts';
import {
  formCautionWords,
  planSentence,
  readingWords,
  refusalSentence,
  testWords,
} from '../../../language/readings.ts';
import { words as common } from '../../../language/words.ts';
import { Button, Field, IconButton, Notice, Select } from '../../../parts/index.ts';
import { meterNamed, useOwnMeters } from '../../../session/own-meters.ts';
import { useFind } from '../find-context.ts';
import { CarStateChoice } from './car-state-choice.tsx';
import { type FormCaution, formCautions, noReadings, takesCurrent } from './form-cautions.ts';
import { entryOf } from './form-entry.ts';
import { FormValues } from './form-values.tsx';
import { MeterChoice } from './meter-choice.tsx';
import { firstForm, type ReadingForm, readingTests } from './reading-form.ts';
import { troubleSentences } from './trouble-sentences.ts';

const words = readingWords.form;

/** Where a reading is written down: over the board, so that list and loom stay in sight while it acts. */
export function ReadingEntry() {
  const { open, reading, closeReading } = useFind();
  const { line } = open;
  if (!reading || !line) return null;
  const forbidden = noReadings(line.circuit);
  if (forbidden) {
    const said = forbidden === 'restraint' ? findWords.restraint : findWords.highVoltage;
    return (
      <section className="reading-entry" aria-label={readingWords.enter}>
        <Notice
          tone="caution"
          sign={forbidden === 'restraint' ? 'airbag' : 'voltage'}
          title={said.title}
          actions={<Button onClick={closeReading}>{common.close}</Button>}
        >
          {said.words}
        </Notice>
      </section>
    );
  }
  return <EntryForm key={reading.key} line={line} />;
}

function EntryForm({ line }: { readonly line: CircuitLine }) {
  const view = useFind();
  const { open, session, standing, picked, reading, closeReading, openReading } = view;
  const own = useOwnMeters();
  const ground = { map: open.map, line, standing, meter: meterNamed(own.usual, own), picked };
  const given = reading?.forms[0];
  const later = reading?.forms.slice(1) ?? [];
  const [form, setForm] = useState<ReadingForm>(() => given ?? firstForm('ohms', ground));
  const [pressed, setPressed] = useState(false);
  const [meters, setMeters] = useState(false);
  const frame = useRef<HTMLFormElement>(null);
  const { test } = form;
  useEffect(() => {
    // The first thing to say about this test: its figure, or its yes or no.
    const first = frame.current?.querySelector<HTMLElement>(`.reading-values[data-test="${test}"] input`);
    first?.focus();
  }, [test]);
  useEffect(() => {
    if (picked) setForm((before) => ({ ...before, pieces: [picked] }));
  }, [picked]);
  const change = (part: Partial<ReadingForm>): void => setForm((before) => ({ ...before, ...part }));
  const answer = entryOf(form, line);
  const keep = (event: FormEvent): void => {
    event.preventDefault();
    setPressed(true);
    if (!answer.ok) return;
    const { replaces } = reading ?? {};
    if (replaces) session.add({ type: 'take-back', entryId: replaces }, answer.entry);
    else session.add(answer.entry);
    if (later.length > 0) openReading(later, null);
    else closeReading();
  };
  const cautions = formCautions(form, line.circuit);
  const tests = readingTests.filter((each) => each !== 'drop' || takesCurrent(line.circuit));
  return (
    <form
      ref={frame}
      className="reading-entry"
      aria-label={reading?.replaces ? readingWords.change : readingWords.enter}
      onSubmit={keep}
      noValidate
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return;
        event.stopPropagation();
        closeReading();
      }}
    >
      <div className="reading-row">
        <Select
          label={words.test}
          value={test}
          options={tests.map((value) => ({ value, label: testWords[value] }))}
          onChange={(value) => {
            setPressed(false);
            setForm({ ...firstForm(value, ground), note: form.note });
          }}
        />
        <FormValues form={form} line={line} onChange={change} />
        <div className="reading-actions">
          <Button type="submit" weight="main">
            {later.length > 0 ? words.keepNext : words.keep}
          </Button>
          <IconButton label={common.close} sign="close" onClick={closeReading} />
        </div>
      </div>
      {pressed && !answer.ok ? (
        <ul className="reading-troubles" role="alert">
          {troubleSentences(answer.troubles, form).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      ) : null}
      <CarStateChoice state={form.state} onChange={(state) => change({ state })} />
      <Cautions cautions={cautions} />
      <div className="reading-more">
        <Field
          label={test === 'function' ? words.position : words.note}
          value={form.note}
          maxLength={4_000}
          onChange={(note) => change({ note })}
        />
        {test === 'ohms' ||
        test === 'beep' ||
        test === 'volts' ||
        test === 'drop' ||
        test === 'capacitance' ? (
          <MeterChoice
            meter={form.meter}
            opened={meters}
            onOpen={setMeters}
            onChange={(meter) => change({ meter })}
          />
        ) : null}
      </div>
    </form>
  );
}

/** What to mind before the test, in one quiet block. */
function Cautions({ cautions }: { readonly cautions: readonly FormCaution[] }) {
  const { open, say } = useFind();
  if (cautions.length === 0) return null;
  const name = (id: string): string => say(nameOf(open.map, id));
  return (
    <ul className="reading-cautions">
      {cautions.map((caution) => (
        <li key={caution.code}>{cautionSentence(caution, name)}</li>
      ))}
      <li className="quiet">{formCautionWords.precedence}</li>
    </ul>
  );
}

function cautionSentence(caution: FormCaution, name: (id: string) => string): string {
  switch (caution.code) {
    case 'battery-on':
      return formCautionWords.batteryOn;
    case 'end-plugged-in':
      return formCautionWords.endPluggedIn(caution.nodeIds.map(name).join(', '));
    case 'injection-refused':
      return refusalSentence(caution.reason, name);
    case 'injection-plan':
      return planSentence(caution.plan);
    case 'unit-pins':
      return formCautionWords.unitPins;
    case 'hands-clear':
      return formCautionWords.handsClear;
  }
}
