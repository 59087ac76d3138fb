import { putRight } from '#core/job/put-right.ts';
import { findWords } from '../../language/find.ts';
import { sayMoment } from '../../language/report.ts';
import { Button, List, TextArea } from '../../parts/index.ts';
import { useDraft } from '../../session/drafts.ts';
import { HandOutJob } from '../start/hand-out.tsx';
import { entryLine } from './entry-line.ts';
import { useFind } from './find-context.ts';

const words = findWords.record;

/** Everything entered in this job, newest first; each line can be taken back, and nothing is lost. */
export function RecordList() {
  const view = useFind();
  const { job } = view.open;
  const stands = new Set(view.standing.map((entry) => entry.id));
  const firsts = putRight(job);
  const replaced = new Set([...firsts.values()].map(({ id }) => id));
  const lines = job.entries.filter((entry) => entry.type !== 'take-back').reverse();
  return (
    <div className="record">
      <NoteEntry />
      <HandOutJob jobId={job.id} />
      <List label={words.label} items={lines} keyOf={(entry) => entry.id} empty={words.empty} ordered>
        {(entry) => {
          const text = entryLine(entry, view);
          const standing = stands.has(entry.id);
          const first = firsts.get(entry.id);
          return (
            <div className={standing ? 'record-line' : 'record-line record-line-gone'}>
              <span className="record-words">
                <time dateTime={entry.at}>{sayMoment(entry.at)}</time>
                {first ? <span className="quiet">{words.putRight(sayMoment(first.at))} </span> : null}
                {standing ? text : <s>{text}</s>}
                {standing ? null : (
                  <span className="quiet"> {replaced.has(entry.id) ? words.replaced : words.takenBack}</span>
                )}
              </span>
              {standing ? (
                <Button
                  aria-label={`${words.takeBack}: ${text}`}
                  onClick={() => view.session.takeBack(entry.id)}
                >
                  {words.takeBack}
                </Button>
              ) : (
                <Button
                  aria-label={`${words.bringBack}: ${text}`}
                  onClick={() => {
                    const takeBack = job.entries.findLast(
                      (each) => each.type === 'take-back' && each.entryId === entry.id,
                    );
                    if (takeBack) view.session.takeBack(takeBack.id);
                  }}
                >
                  {words.bringBack}
                </Button>
              )}
            </div>
          );
        }}
      </List>
    </div>
  );
}

const notWriting = { text: '', writing: false };

function NoteEntry() {
  const { open, session } = useFind();
  const [{ text, writing }, change, drop] = useDraft(open.job.id, 'note', notWriting);
  if (!writing) return <Button onClick={() => change({ writing: true })}>{words.addNote}</Button>;
  return (
    <form
      className="record-note"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== '') session.add({ type: 'note', text: text.trim() });
        drop();
      }}
    >
      <TextArea
        label={words.noteLabel}
        value={text}
        onChange={(value) => change({ text: value })}
        rows={2}
        maxLength={4_000}
      />
      <Button type="submit">{words.addNote}</Button>
    </form>
  );
}
