import type { JobEntry } from '#core/job/job-document.ts';
import { putRight } from '#core/job/put-right.ts';
import type { ReadingEffect } from '#core/job/ranking.ts';
import { findWords, sayPercent } from '../../../language/find.ts';
import { flatSentence, readingWords, unusedWords } from '../../../language/readings.ts';
import { sayMoment } from '../../../language/report.ts';
import { whereLine } from '../../../language/say-where.ts';
import { Button, Figure } from '../../../parts/index.ts';
import { useFind } from '../find-context.ts';
import { Contradictions } from './contradictions.tsx';
import { effectRanges, numberedReadings } from './numbered-readings.ts';
import { formOf, type ReadingEntry } from './reading-form.ts';
import { readingLine, stateLine } from './reading-line.ts';

const words = readingWords.ledger;

/** Every reading in one line, with what it did; each can be put right or taken back. */
export function ReadingsLedger() {
  const view = useFind();
  const { open, standing, openReading } = view;
  const readings = numberedReadings(standing);
  const firsts = putRight(open.job);
  const effects = new Map(open.ranking?.readings.map((effect) => [effect.entryId, effect]));
  return (
    <section className="ledger" aria-label={readingWords.label}>
      {open.line ? (
        <Button large onClick={() => openReading([], null)}>
          {readingWords.enter} <kbd>R</kbd>
        </Button>
      ) : null}
      <Contradictions />
      {readings.length === 0 ? <p className="list-empty quiet">{readingWords.empty}</p> : null}
      <ol className="ledger-list">
        {readings.map(({ number, entry }) => (
          <LedgerLine
            key={entry.id}
            number={number}
            entry={entry}
            first={firsts.get(entry.id) ?? null}
            effect={effects.get(entry.id) ?? null}
          />
        ))}
      </ol>
    </section>
  );
}

function LedgerLine({
  number,
  entry,
  first,
  effect,
}: {
  readonly number: number;
  readonly entry: ReadingEntry;
  /** What it was put in place of; null for one as first entered. */
  readonly first: JobEntry | null;
  readonly effect: ReadingEffect | null;
}) {
  const view = useFind();
  const { open, session, pointedEntry, point, openReading } = view;
  const { line } = open;
  const ranges = effect ? effectRanges(effect) : [];
  const said = readingLine(entry, view);
  return (
    <li
      className={pointedEntry === entry.id ? 'ledger-line ledger-line-pointed' : 'ledger-line'}
      onPointerEnter={() => point(ranges, entry.id)}
      onPointerLeave={() => point([])}
      onFocus={() => point(ranges, entry.id)}
      onBlur={() => point([])}
    >
      <span className="ledger-number">
        <span className="only-read-aloud">{words.number(number)}</span>
        <span aria-hidden="true">{number}</span>
      </span>
      <div className="ledger-words">
        <p className="ledger-said">{said}</p>
        <p className="ledger-state">
          <time dateTime={(first ?? entry).at}>{sayMoment((first ?? entry).at)}</time>
          {first ? `, ${words.putRightAt(sayMoment(entry.at))}` : ''}. {stateLine(entry.state, view)}
          {entry.meter ? `, ${entry.meter.name}` : ''}
          {entry.note === '' || entry.reading.test === 'function' ? '' : `. ${entry.note}`}
        </p>
        <Effect effect={effect} />
      </div>
      <div className="ledger-actions">
        {line ? (
          <Button aria-label={words.put(said)} onClick={() => openReading([formOf(entry, line)], entry.id)}>
            {words.putShort}
          </Button>
        ) : null}
        <Button aria-label={words.takeBack(said)} onClick={() => session.takeBack(entry.id)}>
          {words.takeBackShort}
        </Button>
      </div>
    </li>
  );
}

/** What a reading did: where it alone puts the fault, and what it added; or why it tells nothing. */
function Effect({ effect }: { readonly effect: ReadingEffect | null }) {
  const { where, lengths } = useFind();
  if (!effect) return <p className="ledger-effect quiet">{words.working}</p>;
  if (effect.unused) return <p className="ledger-effect">{unusedWords[effect.unused]}</p>;
  const alone =
    effect.flat !== null
      ? flatSentence(effect.flat, lengths)
      : effect.interval === 'everywhere'
        ? words.wide
        : `${words.alone}: ${effect.interval.map((range) => whereLine(where(range))).join('; ')}.`;
  const narrowed = narrowedShare(effect.bits);
  return (
    <p className="ledger-effect">
      {alone}{' '}
      {narrowed >= leastNarrowed ? (
        <span className="quiet">
          {words.narrows} <Figure value={sayPercent(narrowed)} unit={findWords.list.percent} />.
        </span>
      ) : (
        <span className="quiet">{words.nothingNew}</span>
      )}
    </p>
  );
}

/** What is narrowed by less than this is as it was. */
const leastNarrowed = 0.05;

/** The share of the ground that falling entropy takes away: one bit halves it. */
export const narrowedShare = (bits: number): number => 1 - 2 ** -Math.max(0, bits);
