import { Fragment, useEffect, useRef, useState } from 'react';
import { findWords } from '../../language/find.ts';
import { DigEntry } from './dig-entry.tsx';
import { useFind } from './find-context.ts';
import { NextTestPanel } from './readings/next-test-panel.tsx';
import { TimeBoxHead } from './time-box-head.tsx';

/** How many openings are listed before the rest is asked for. */
const firstShown = 12;

/**
 * Where to open first: the openings in order, and the test that pays before the opening it spares or after the
 * first, where that is quicker still. The first opening stands open; the others open on demand.
 */
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
  const testAfterFirst = ranking.nextTests[0]?.betterAfterOpening === true && ranking.digPlan.length > 0;
  const shown = all ? ranking.digPlan : ranking.digPlan.slice(0, firstShown);
  return (
    <>
      <TimeBoxHead />
      <ol ref={list} className="dig-list" aria-label={findWords.list.label}>
        {testAfterFirst || ranking.digPlan.length === 0 ? null : (
          <li className="dig-test">
            <NextTestPanel />
          </li>
        )}
        {shown.map((step, index) => {
          const key = `${step.rank} ${step.look.fromMm.toFixed(0)} ${step.look.toMm.toFixed(0)}`;
          return (
            <Fragment key={key}>
              <DigEntry
                step={step}
                expanded={(index === 0) !== toggled.has(key)}
                onToggle={() => toggle(key)}
              />
              {testAfterFirst && index === 0 ? (
                <li className="dig-test">
                  <NextTestPanel />
                </li>
              ) : null}
            </Fragment>
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
