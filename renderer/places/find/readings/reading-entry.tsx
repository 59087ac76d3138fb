import { type FormEvent, useEffect, useRef, useState } from 'react';
import type { CircuitLine } from '#core/circuit/circuit-line.ts';
import type { JobEntry } from '#core/job/job-document.ts';
import { findWords } from '../../../language/find.ts';
import { readingWords, testWords } from '../../../language/readings.ts';
import { words as common } from '../../../language/words.ts';
import { Button, IconButton, Notice, Select } from '../../../parts/index.ts';
import { meterNamed, useOwnMeters } from '../../../session/own-meters.ts';
import { useFind } from '../find-context.ts';
import { formCautions, noReadings, takesCurrent } from './form-cautions.ts';
import { entryOf } from './form-entry.ts';
import { FormValues } from './form-values.tsx';
import { leadGroups, settleLead } from './lead.ts';
import { ReadingDetails } from './reading-details.tsx';
import { firstForm, meterTests, type ReadingForm, type ReadingTest, readingTests } from './reading-form.ts';
import { TestCautions } from './test-cautions.tsx';
import { troubleSentences } from './trouble-sentences.ts';
import { unkeptForm } from './unkept-form.ts';

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
  const usual = meterNamed(own.usual, own);
  const ground = { map: open.map, line, standing, meter: usual, picked };
  const given = reading?.forms[0];
  const later = reading?.forms.slice(1) ?? [];
  const unkept = unkeptForm(open.job.id, line.circuit.id);
  const isPutRight = reading?.replaces != null;
  const [typed, setForm] = useState<ReadingForm>(
    () => given ?? unkept.read() ?? firstForm(lastTest(standing) ?? readingTests[0], ground),
  );
  // The workshop's meters may be read from disk only after the form stands open. Choosing a meter makes it
  // the usual one, so a form without one is a form nobody chose for yet.
  const awaitsMeter = !isPutRight && typed.meter === null && meterTests.has(typed.test);
  const form = awaitsMeter && usual ? { ...typed, meter: usual } : typed;
  // What was typed for another kind of test comes back with that test.
  const others = useRef(new Map<ReadingTest, ReadingForm>());
  const [pressed, setPressed] = useState(false);
  const [cautionText, setCautionText] = useState(false);
  const frame = useRef<HTMLFormElement>(null);
  const { test } = form;
  useEffect(() => {
    // The first thing to say: a figure, or a yes or no. Once only: the keys that go through the tests stay there.
    const inputs = frame.current?.querySelectorAll<HTMLInputElement>('.reading-values input');
    const empty = [...(inputs ?? [])].find(({ value }) => value === '');
    (empty ?? inputs?.[0])?.focus();
  }, []);
  useEffect(() => {
    if (picked) setForm((before) => ({ ...before, pieces: [picked] }));
  }, [picked]);
  const put = (next: ReadingForm): void => {
    setForm(next);
    if (!given) unkept.keep(next);
  };
  const change = (part: Partial<ReadingForm>): void => {
    const next = { ...form, ...part };
    if (!part.state) {
      put(next);
      return;
    }
    // Pulling a plug apart or pushing it together moves a lead on it to a place that is there.
    const groups = leadGroups(open.map, line, part.state, open.job.alsoFailingCircuitIds);
    const settled = (at: 'from' | 'to') => settleLead(next[at], groups, line.circuit.id);
    put({ ...next, from: settled('from'), to: settled('to') });
  };
  const answer = entryOf(form, line);
  const keep = (event: FormEvent): void => {
    event.preventDefault();
    setPressed(true);
    if (!answer.ok) return;
    if (!given) unkept.drop();
    const { replaces } = reading ?? {};
    if (replaces) session.add({ type: 'take-back', entryId: replaces }, answer.entry);
    else session.add(answer.entry);
    if (later.length > 0) openReading(later, null);
    else closeReading();
  };
  const cautions = formCautions(form, line);
  const tests = readingTests.filter((each) => each !== 'drop' || takesCurrent(line.circuit));
  const troubles = pressed && !answer.ok ? answer.troubles : [];
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
            others.current.set(test, form);
            put({ ...(others.current.get(value) ?? firstForm(value, ground)), note: form.note });
          }}
        />
        <FormValues form={form} line={line} troubles={troubles} onChange={change} />
        <div className="reading-actions">
          <Button type="submit" weight="main">
            {later.length > 0 ? words.keepNext : isPutRight ? words.keepChange : words.keep}
          </Button>
          <IconButton label={common.close} sign="close" onClick={closeReading} />
        </div>
      </div>
      {troubles.length > 0 ? (
        <ul className="reading-troubles" role="alert">
          {troubleSentences(troubles, form).map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      ) : null}
      <ReadingDetails key={test} form={form} onChange={change} />
      <TestCautions cautions={cautions} state={form.state} shown={cautionText} onShow={setCautionText} />
    </form>
  );
}

/** One reading is seldom taken alone: the next begins as the last test. */
function lastTest(standing: readonly JobEntry[]): ReadingTest | null {
  return standing.findLast((entry) => entry.type === 'reading')?.reading.test ?? null;
}
