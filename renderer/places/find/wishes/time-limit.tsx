import { type FormEvent, useState } from 'react';
import { planWishes } from '#core/job/plan-wishes.ts';
import { findWords } from '../../../language/find.ts';
import { wishWords } from '../../../language/wishes.ts';
import { Button, Field, readNumber } from '../../../parts/index.ts';
import { useFind } from '../find-context.ts';

const words = wishWords.time;
const quick = [10, 20, 40] as const;

/** How many minutes there are for looking: a few at a press, any other typed, or no limit. */
export function TimeLimit() {
  const { session, standing } = useFind();
  const now = planWishes(standing).timeBoxMinutes ?? null;
  const [text, setText] = useState('');
  const [trouble, setTrouble] = useState<string>();
  const set = (minutes: number | null): void => {
    setText('');
    setTrouble(undefined);
    if (minutes !== now) session.add({ type: 'time-box', minutes });
  };
  const send = (event: FormEvent): void => {
    event.preventDefault();
    const minutes = readNumber(text);
    if (minutes === null || minutes < 1 || minutes > 1_440) setTrouble(words.wrong);
    else set(minutes);
  };
  return (
    <section aria-label={words.label}>
      <h2>{words.label}</h2>
      <div className="wish-minutes">
        <Button aria-pressed={now === null} onClick={() => set(null)}>
          {words.none}
        </Button>
        {quick.map((minutes) => (
          <Button key={minutes} aria-pressed={now === minutes} onClick={() => set(minutes)}>
            {words.quick(minutes)}
          </Button>
        ))}
      </div>
      <form className="wish-minutes-other" onSubmit={send}>
        <Field label={words.other} value={text} trouble={trouble} maxLength={8} onChange={setText} />
        <span className="unit">{findWords.list.minutes}</span>
        <Button type="submit">{words.keep}</Button>
      </form>
      <p className="field-hint">{words.hint}</p>
    </section>
  );
}
