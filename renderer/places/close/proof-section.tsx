import type { EntryOf } from '#core/job/job-document.ts';
import type { ProofItem } from '#core/job/proof-checklist.ts';
import { faultStillThere } from '#core/job/proof-checklist.ts';
import { shownAfterRepair } from '#core/job/shown-after-repair.ts';
import { isLookOnly } from '#core/map/kinds.ts';
import { closeWords, expectationSentence, proofCheckWords } from '../../language/close.ts';
import { figureText, sayAmps } from '../../language/say-figure.ts';
import { Button, Notice } from '../../parts/index.ts';
import { useFind } from '../find/find-context.ts';
import { readingLine, stateLine } from '../find/readings/reading-line.ts';
import { SearchOn } from './search-on.tsx';
import { Section } from './section.tsx';
import { TryAgain } from './try-again.tsx';
import './proof.css';

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
  const { open, standing } = useFind();
  const repaired = standing.some((entry) => entry.type === 'repair');
  const done = repaired && items.every((item) => item.done?.good);
  const shown = open.line ? shownAfterRepair(open.map, open.line, standing) : [];
  const duty = open.line?.circuit.duty;
  return (
    <Section number={4} title={closeWords.sections.proof} done={done}>
      {isLookOnly(duty) ? (
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
      {faultStillThere(items) || shown.length > 0 ? (
        <SearchOn readings={shown} onSearch={onSearchOn} />
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
  return (
    <li className={done?.good ? 'proof-line proof-line-good' : 'proof-line'}>
      <p className="proof-title">
        {check === 'reading' && repeats
          ? `${proofCheckWords.reading}: ${stateLine(repeats.state, view)}`
          : proofCheckWords[check]}
      </p>
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

/** What is tried again, so that no two tests of a job read alike: what it showed before, and how the car stood. */
export const testTitle = ({ check, repeats }: ProofItem, view: Parameters<typeof stateLine>[1]): string =>
  check === 'reading' && repeats
    ? `${proofCheckWords.reading} (${readingLine(repeats, view)}; ${stateLine(repeats.state, view)})`
    : proofCheckWords[check];

/** What was read when it was tried: a whole reading, or the current alone. */
function shownAfter(
  { id, at, reading, state, amps, note }: EntryOf<'proof'>,
  view: Parameters<typeof readingLine>[1],
): string | null {
  if (reading && state) return `, ${readingLine({ id, at, type: 'reading', reading, state, note }, view)}`;
  return amps === undefined ? null : `, ${figureText(sayAmps(amps))}`;
}

function Done({ done }: { readonly done: EntryOf<'proof'> }) {
  const view = useFind();
  return (
    <div className="kept-repair">
      <p>
        <b className={done.good ? 'proof-good' : 'proof-bad'}>{done.good ? words.wasGood : words.wasBad}</b>
        {shownAfter(done, view)}
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
