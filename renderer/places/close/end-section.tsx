import { canClose } from '#core/job/can-close.ts';
import type { CloseOutcome } from '#core/job/closing-words.ts';
import { closingOf } from '#core/job/job-stage.ts';
import { closeWords, hindranceSentence, outcomeWords } from '../../language/close.ts';
import { nameOf } from '../../language/name-of.ts';
import { Button, Choice, Notice, TextArea } from '../../parts/index.ts';
import { useDraft } from '../../session/drafts.ts';
import { useFind } from '../find/find-context.ts';
import { optionsOf } from './options.ts';
import { testTitle } from './proof-section.tsx';
import { SearchOn } from './search-on.tsx';
import { Section } from './section.tsx';
import './end.css';

const words = closeWords.end;

const asProved: { readonly outcome: CloseOutcome; readonly reason: string; readonly advice: string } = {
  outcome: 'proved',
  reason: '',
  advice: '',
};

/** The end of a job: proved, or with a reason why not; what is missing is said, nothing is hidden. */
export function EndSection({ onSearchOn }: { readonly onSearchOn: () => void }) {
  const view = useFind();
  const { open, standing, session, say } = view;
  const [{ outcome, reason, advice }, change, drop] = useDraft(open.job.id, 'end', asProved);
  const closed = closingOf(standing);
  if (closed) {
    return (
      <Section number={7} title={closeWords.sections.end} done>
        <Notice
          sign="tick"
          title={words.closed(outcomeWords[closed.outcome])}
          actions={<Button onClick={() => session.takeBack(closed.id)}>{words.reopen}</Button>}
        >
          <p>{words.closedHint}</p>
          {closed.reason === '' ? null : <p>{closed.reason}</p>}
        </Notice>
        {closed.outcome === 'proved' ? <SearchOn readings={[]} onSearch={onSearchOn} /> : null}
      </Section>
    );
  }
  const check = canClose(open.map, open.line, standing, outcome, reason);
  const sentence = (each: (typeof check.hindrances)[number]): string =>
    hindranceSentence(
      each,
      (id) => say(nameOf(open.map, id)),
      (item) => testTitle(item, view),
    );
  return (
    <Section number={7} title={closeWords.sections.end} done={false}>
      <form
        className="close-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (check.hindrances.length > 0) return;
          session.add({ type: 'close', outcome, reason: reason.trim(), advice: advice.trim() });
          drop();
        }}
      >
        <Choice
          label={words.outcome}
          value={outcome}
          options={optionsOf(outcomeWords)}
          onChange={(value) => change({ outcome: value })}
        />
        {outcome === 'proved' ? null : (
          <TextArea
            label={words.reason}
            hint={words.reasonHint}
            value={reason}
            rows={2}
            maxLength={4_000}
            onChange={(value) => change({ reason: value })}
          />
        )}
        <TextArea
          label={words.advice}
          value={advice}
          rows={2}
          maxLength={4_000}
          onChange={(value) => change({ advice: value })}
        />
        {check.hindrances.length > 0 ? (
          <div className="missing">
            <h3>{words.missing}</h3>
            <ul className="plain-list">
              {check.hindrances.map((each, i) => (
                <li key={`${each.code} ${String(i)}`}>{sentence(each)}</li>
              ))}
            </ul>
          </div>
        ) : (
          <p className="quiet">{words.ready}</p>
        )}
        {check.reminders.length > 0 ? (
          <div className="missing">
            <h3>{words.reminders}</h3>
            <ul className="plain-list">
              {check.reminders.map((each, i) => (
                <li key={`${each.code} ${String(i)}`}>{sentence(each)}</li>
              ))}
            </ul>
          </div>
        ) : null}
        <Button type="submit" weight="main" large disabled={check.hindrances.length > 0}>
          {words.close}
        </Button>
      </form>
    </Section>
  );
}
