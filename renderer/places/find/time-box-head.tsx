import { findWords, sayMinutes, sayPercent } from '../../language/find.ts';
import { wishWords } from '../../language/wishes.ts';
import { Button, Figure, Notice } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

const words = wishWords.time;

/** Chances nearer than this are the same on screen. */
const sameChance = 0.005;

/** Over a list that keeps to some minutes: what can be seen in them, and that nothing else would show more. */
export function TimeBoxHead() {
  const { open, session, standing } = useFind();
  const box = open.ranking?.timeBox;
  const asked = standing.findLast((entry) => entry.type === 'time-box')?.minutes ?? null;
  if (!box || asked === null) return null;
  const lift = <Button onClick={() => session.add({ type: 'time-box', minutes: null })}>{words.none}</Button>;
  if (box.seen <= 0) {
    return (
      <Notice title={words.holds(asked)} actions={lift}>
        {words.nothing(asked)}
      </Notice>
    );
  }
  const best = box.mostSeen - box.seen < sameChance;
  return (
    <section className="time-box" aria-label={words.holds(asked)}>
      <p>
        <b>{words.holds(asked)}</b>:{' '}
        <Figure value={sayPercent(box.seen)} unit={findWords.list.percent} large /> {words.seen}{' '}
        <Figure value={sayMinutes(box.minutes)} unit={findWords.list.minutes} large />
      </p>
      <p className="quiet">{best ? words.best : words.nearly(sayPercent(box.mostSeen))}</p>
      {lift}
    </section>
  );
}
