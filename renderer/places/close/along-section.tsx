import { useState } from 'react';
import type { AlongResult } from '#core/job/closing-words.ts';
import type { EntryOf } from '#core/job/job-document.ts';
import { alongWords, closeWords } from '../../language/close.ts';
import { figureText } from '../../language/say-figure.ts';
import { saySmallLength } from '../../language/say-length.ts';
import { Button, Choice, TextArea } from '../../parts/index.ts';
import { useDraft } from '../../session/drafts.ts';
import { useFind } from '../find/find-context.ts';
import { optionsOf } from './options.ts';
import { Section } from './section.tsx';

const words = closeWords.along;
/** How far along the loom other rub marks are looked for. Common practice, no source. */
const eachWayMm = 300;

const notLookedYet: {
  readonly beside: AlongResult | null;
  readonly twin: AlongResult | null;
  readonly note: string;
} = { beside: null, twin: null, note: '' };

/** The second look: along the loom each way, and at the twin place. */
export function AlongSection({ cause }: { readonly cause: EntryOf<'finding'> | null }) {
  const { open, standing, session, lengths } = useFind();
  const [{ beside, twin, note }, change, drop] = useDraft(
    open.job.id,
    `along ${cause?.id ?? ''}`,
    notLookedYet,
  );
  const [asked, setAsked] = useState(false);
  const kept = standing.findLast(
    (entry): entry is EntryOf<'looked-along'> =>
      entry.type === 'looked-along' && entry.findingId === cause?.id,
  );
  return (
    <Section number={3} title={closeWords.sections.along} done={kept !== undefined}>
      <p className="quiet">{words.hint(figureText(saySmallLength(eachWayMm, lengths)))}</p>
      {kept ? (
        <div className="kept-repair">
          <p>
            {words.beside}: <b>{alongWords[kept.beside]}</b>. {words.twin}: <b>{alongWords[kept.twin]}</b>.{' '}
            {kept.note}
          </p>
          <Button
            weight="quiet"
            aria-label={closeWords.found.takeBack(closeWords.sections.along)}
            onClick={() => session.takeBack(kept.id)}
          >
            {closeWords.found.takeBackShort}
          </Button>
          {kept.beside === 'damaged' || kept.twin === 'damaged' ? (
            <>
              <p className="field-trouble">{words.damagedToo}</p>
              <a className="button" href={`#/job/${open.job.id}`}>
                {words.markIt}
              </a>
            </>
          ) : null}
        </div>
      ) : cause ? (
        <form
          className="close-form"
          onSubmit={(event) => {
            event.preventDefault();
            setAsked(true);
            if (beside === null || twin === null) return;
            session.add({
              type: 'looked-along',
              findingId: cause.id,
              eachWayMm,
              beside,
              twin,
              note: note.trim(),
            });
            drop();
          }}
        >
          <Choice
            label={words.beside}
            value={beside}
            trouble={asked && beside === null ? words.missing : undefined}
            options={optionsOf(alongWords)}
            onChange={(value) => change({ beside: value })}
          />
          <Choice
            label={words.twin}
            value={twin}
            trouble={asked && twin === null ? words.missing : undefined}
            options={optionsOf(alongWords)}
            onChange={(value) => change({ twin: value })}
          />
          <TextArea
            label={words.note}
            value={note}
            rows={2}
            maxLength={4_000}
            onChange={(value) => change({ note: value })}
          />
          <Button type="submit" weight="main" large>
            {words.keep}
          </Button>
        </form>
      ) : (
        <p className="quiet">{closeWords.repair.none}</p>
      )}
    </Section>
  );
}
