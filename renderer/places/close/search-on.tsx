import { closingOf } from '#core/job/job-stage.ts';
import { closeWords } from '../../language/close.ts';
import { Button, Notice } from '../../parts/index.ts';
import { useFind } from '../find/find-context.ts';
import type { ReadingEntry } from '../find/readings/reading-form.ts';
import { readingLine } from '../find/readings/reading-line.ts';

const words = closeWords.proof;

/** What shows that one repair was not all of it, and the way back to the search; entries all stay. */
export function SearchOn({
  readings,
  onSearch,
}: {
  /** Readings since the repair that no sound circuit shows; none when a test of the proof says it. */
  readonly readings: readonly ReadingEntry[];
  readonly onSearch?: () => void;
}) {
  const view = useFind();
  const { standing, session } = view;
  const closed = closingOf(standing);
  const title = closed ? words.closedShown : readings.length > 0 ? words.shown : words.stillThere;
  const goOn = (): void => {
    if (closed) session.takeBack(closed.id);
    session.add({ type: 'search-on', note: '' });
    onSearch?.();
  };
  return (
    <Notice
      tone={closed ? 'plain' : 'caution'}
      sign="care"
      title={title}
      actions={
        <Button weight={closed ? 'plain' : 'main'} large onClick={goOn}>
          {words.searchOn}
        </Button>
      }
    >
      {readings.map((entry) => (
        <p key={`${JSON.stringify(entry.reading)} ${JSON.stringify(entry.state)}`}>
          {readingLine(entry, view)}
        </p>
      ))}
      <p>{closed ? words.closedShownHint : words.stillThereHint}</p>
    </Notice>
  );
}
