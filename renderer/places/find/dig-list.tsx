import { useEffect, useRef, useState } from 'react';
import { findWords } from '../../language/find.ts';
import { DigEntry } from './dig-entry.tsx';
import { useFind } from './find-context.ts';

/** How many openings are listed before the rest is asked for. */
const firstShown = 12;

/** Where to open first: the openings in order. The first stands open; the others open on demand. */
export function DigList() {
  const { ranking } = useFind().open;
  const [toggled, setToggled] = useState<ReadonlySet<string>>(new Set());
  const [all, setAll] = useState(false);
  const list = useRef<HTMLOListElement>(null);
  const shownBefore = useRef(ranking);
  useEffect(() => {
    if (shownBefore.current === ranking) return;
    shownBefore.current = ranking;
    // The new first opening must be in sight, and the pressed button may have gone with its opening.
    list.current?.parentElement?.scrollTo({ top: 0 });
    if (document.activeElement === document.body) list.current?.querySelector('button')?.focus();
  }, [ranking]);
  if (!ranking) return null;
  const toggle = (key: string): void => {
    const next = new Set(toggled);
    if (!next.delete(key)) next.add(key);
    setToggled(next);
  };
  const shown = all ? ranking.digPlan : ranking.digPlan.slice(0, firstShown);
  return (
    <>
      <ol ref={list} className="dig-list" aria-label={findWords.list.label}>
        {shown.map((step, index) => {
          const key = `${step.rank} ${step.look.fromMm.toFixed(0)} ${step.look.toMm.toFixed(0)}`;
          return (
            <DigEntry
              key={key}
              step={step}
              expanded={(index === 0) !== toggled.has(key)}
              onToggle={() => toggle(key)}
            />
          );
        })}
      </ol>
      {shown.length < ranking.digPlan.length ? (
        <button type="button" className="button" onClick={() => setAll(true)}>
          {findWords.list.rest(ranking.digPlan.length - shown.length)}
        </button>
      ) : null}
    </>
  );
}
