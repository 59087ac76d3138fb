import { useState } from 'react';
import { panelsOff } from '#core/job/standing-entries.ts';
import { findWords, sayMinutes } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { Button, Figure } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

const words = findWords.refit;

/** What is off the car now and must go back on; always in sight, and opens into the list. */
export function RefitCount() {
  const { open, standing, session, say } = useFind();
  const [shown, setShown] = useState(false);
  const panels = [...panelsOff(standing)]
    .map((id) => open.map.panels.get(id))
    .filter((panel) => panel !== undefined)
    .reverse();
  const minutes = panels.reduce((sum, panel) => sum + panel.minutesOn, 0);
  if (panels.length === 0) return <p className="refit refit-none quiet">{words.none}</p>;
  return (
    <div className="refit">
      <Button aria-expanded={shown} onClick={() => setShown(!shown)}>
        {words.some(panels.length)} <Figure value={sayMinutes(minutes)} unit={findWords.list.minutes} />
      </Button>
      {shown ? (
        <ul className="refit-list" aria-label={words.label}>
          {panels.map((panel) => (
            <li key={panel.id}>
              <span>{say(nameOf(open.map, panel.id))}</span>
              <Figure value={sayMinutes(panel.minutesOn)} unit={findWords.list.minutes} large />
              <Button
                aria-label={words.backOn(say(nameOf(open.map, panel.id)))}
                onClick={() => session.add({ type: 'panel-on', panelId: panel.id })}
              >
                {words.on}
              </Button>
            </li>
          ))}
        </ul>
      ) : null}
    </div>
  );
}
