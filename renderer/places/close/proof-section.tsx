import { useState } from 'react';
import type { EntryOf } from '#core/job/job-document.ts';
import { meterOf } from '#core/job/meter-record.ts';
import type { ProofItem } from '#core/job/proof-checklist.ts';
import { faultStillThere } from '#core/job/proof-checklist.ts';
import type { Reading } from '#core/job/reading.ts';
import { looksSound } from '#core/job/sound-expectation.ts';
import { closeWords, expectationSentence, proofCheckWords } from '../../language/close.ts';
import { Button, Checkbox, Notice, NumberField } from '../../parts/index.ts';
import { useFind } from '../find/find-context.ts';
import { readingLine, stateLine } from '../find/readings/reading-line.ts';
import { Section } from './section.tsx';

const words = closeWords.proof;

/** The tests of before, tried again on the repaired circuit. */
export function ProofSection({
  items,
  cause,
  onSearchOn,
}: {
  readonly items: readonly ProofItem[];
  readonly cause: EntryOf<'finding'> | null;
  readonly onSearchOn: () => void;
}) {
  const { open, standing, session } = useFind();
  const repaired = standing.some((entry) => entry.type === 'repair');
  const done = repaired && items.every((item) => item.done?.good);
  const duty = open.line?.circuit.duty;
  return (
    <Section number={4} title={closeWords.sections.proof} done={done}>
      {duty === 'restraint' || duty === 'high-voltage' ? (
        <Notice tone="caution" sign={duty === 'restraint' ? 'airbag' : 'voltage'}>
          {words.lookOnly}
        </Notice>
      ) : (
        <p className="quiet">{words.beforePower}</p>
      )}
      {repaired ? null : <p className="quiet">{words.noRepair}</p>}
      <ol className="proof-list">
        {items.map((item) => (
          <ProofLine
            key={`${item.check} ${item.repeats?.id ?? ''} ${item.done?.id ?? ''}`}
            item={item}
            cause={cause}
            ready={repaired}
          />
        ))}
      </ol>
      {faultStillThere(items) ? (
        <Notice
          tone="caution"
          sign="care"
          title={words.stillThere}
          actions={
            <Button
              weight="main"
              large
              onClick={() => {
                session.add({ type: 'search-on', note: '' });
                onSearchOn();
              }}
            >
              {words.searchOn}
            </Button>
          }
        >
          {words.stillThereHint}
        </Notice>
      ) : null}
    </Section>
  );
}

function ProofLine({
  item,
  cause,
  ready,
}: {
  readonly item: ProofItem;
  readonly cause: EntryOf<'finding'> | null;
  readonly ready: boolean;
}) {
  const view = useFind();
  const { check, repeats, expected, done } = item;
  const title =
    check === 'reading' ? `${proofCheckWords.reading}: ${stateLineOf(item, view)}` : proofCheckWords[check];
  return (
    <li className={done?.good ? 'proof-line proof-line-good' : 'proof-line'}>
      <p className="proof-title">{title}</p>
      {repeats ? (
        <p>
          <span className="quiet">{words.before}:</span> {readingLine(repeats, view)}
        </p>
      ) : null}
      {check === 'reading' || check === 'move' ? (
        <p>
          <span className="quiet">{words.goodIs}:</span> {expectationSentence(expected)}
        </p>
      ) : null}
      {done ? <Done done={done} /> : ready ? <TryAgain item={item} cause={cause} /> : null}
    </li>
  );
}

const stateLineOf = ({ repeats }: ProofItem, view: Parameters<typeof stateLine>[1]): string =>
  repeats ? stateLine(repeats.state, view) : '';

function Done({ done }: { readonly done: EntryOf<'proof'> }) {
  const view = useFind();
  return (
    <div className="kept-repair">
      <p>
        <b className={done.good ? 'proof-good' : 'proof-bad'}>{done.good ? words.wasGood : words.wasBad}</b>
        {done.reading && done.state
          ? `, ${readingLine({ ...done, type: 'reading', reading: done.reading, state: done.state }, view)}`
          : null}
      </p>
      <Button
        aria-label={`${words.again}: ${proofCheckWords[done.check]}`}
        onClick={() => view.session.takeBack(done.id)}
      >
        {words.again}
      </Button>
    </div>
  );
}

/** A figure where the test has one; else good or still bad. */
function TryAgain({ item, cause }: { readonly item: ProofItem; readonly cause: EntryOf<'finding'> | null }) {
  const { session } = useFind();
  const [figure, setFigure] = useState<number | null>(null);
  const [openLine, setOpenLine] = useState(false);
  const [changed, setChanged] = useState<number | null>(0);
  const [tried, setTried] = useState<number | null>(10);
  const { check, repeats, expected } = item;
  const test = repeats?.reading.test;
  const asksFigure = check === 'reading' && (test === 'ohms' || test === 'volts');
  const reading = readingAfter(item, cause, { figure, openLine, changed, tried });
  const sound =
    reading && check === 'reading' && asksFigure
      ? looksSound(expected, reading, meterOf(repeats?.meter))
      : null;
  const moved = check !== 'move' || ((tried ?? 0) > 0 && (changed ?? 1) === 0);
  const canBeGood = (!asksFigure || reading !== null) && moved;
  const name = proofCheckWords[check];
  const enter = (good: boolean): void => {
    session.add({
      type: 'proof',
      check,
      ...(repeats && check === 'reading' ? { repeats: repeats.id } : {}),
      ...(reading && repeats ? { reading, state: repeats.state } : {}),
      good,
      note: '',
    });
  };
  return (
    <div className="try-again">
      {asksFigure ? (
        <NumberField
          label={words.figure}
          value={figure}
          unit={test === 'ohms' ? 'Ω' : 'V'}
          disabled={openLine}
          places={3}
          onChange={setFigure}
        />
      ) : null}
      {test === 'ohms' && check === 'reading' ? (
        <Checkbox label={words.openLine} checked={openLine} onChange={setOpenLine} />
      ) : null}
      {check === 'move' ? (
        <>
          <NumberField
            label={words.changed}
            value={changed}
            unit=""
            min={0}
            max={10_000}
            places={0}
            onChange={setChanged}
          />
          <NumberField
            label={words.tried}
            value={tried}
            unit=""
            min={1}
            max={10_000}
            places={0}
            onChange={setTried}
          />
        </>
      ) : null}
      {sound === false ? <p className="field-trouble">{words.unlike}</p> : null}
      <div className="button-row">
        <Button
          large
          aria-label={`${words.good}: ${name}`}
          disabled={!canBeGood || sound === false}
          onClick={() => enter(true)}
        >
          {words.good}
        </Button>
        <Button large aria-label={`${words.bad}: ${name}`} onClick={() => enter(false)}>
          {words.bad}
        </Button>
      </div>
    </div>
  );
}

interface Typed {
  readonly figure: number | null;
  readonly openLine: boolean;
  readonly changed: number | null;
  readonly tried: number | null;
}

/** What the test shows now, as a reading; null where it has no figure or none was typed. */
function readingAfter(
  { check, repeats }: ProofItem,
  cause: EntryOf<'finding'> | null,
  { figure, openLine, changed, tried }: Typed,
): Reading | null {
  if (check === 'move') {
    const stretches = repeats?.reading.test === 'move' ? repeats.reading.stretches : cause?.stretches;
    if (!stretches || changed === null || tried === null) return null;
    return {
      test: 'move',
      stretches: [...stretches],
      changed: Math.round(changed),
      tried: Math.round(tried),
    };
  }
  if (check !== 'reading' || !repeats) return null;
  if (repeats.reading.test === 'ohms') {
    if (openLine) return { ...repeats.reading, ohms: 'open-line' };
    return figure === null ? null : { ...repeats.reading, ohms: Math.max(0, figure) };
  }
  if (repeats.reading.test === 'volts') {
    return figure === null ? null : { ...repeats.reading, volts: figure };
  }
  return null;
}
