import { useId, useMemo, useState } from 'react';
import { closingOf } from '#core/job/job-stage.ts';
import { planWishes } from '#core/job/plan-wishes.ts';
import { panelWishes } from '#core/job/wish-entries.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { findWords, sayMinutes } from '../../../language/find.ts';
import { nameOf } from '../../../language/name-of.ts';
import { panelWishWords, wishWords } from '../../../language/wishes.ts';
import { Button, Figure, Select } from '../../../parts/index.ts';
import { useFind } from '../find-context.ts';
import {
  entriesFor,
  type PanelStanding,
  pairsOverOnePlace,
  panelStanding,
  panelsInTheWay,
} from './panel-standing.ts';
import { TimeLimit } from './time-limit.tsx';

const standings: readonly { readonly value: PanelStanding; readonly label: string }[] = [
  { value: 'as-planned', label: panelWishWords['as-planned'] },
  { value: 'off', label: wishWords.panels.off },
  ...panelWishes
    .filter((wish) => wish !== 'as-planned')
    .map((value) => ({ value, label: panelWishWords[value] })),
];

/** What the user wishes of the order: minutes to keep to, panels that stay on, are off or come out anyway. */
export function WishPanel() {
  const { open, standing } = useFind();
  const { line, map } = open;
  const panels = useMemo(() => (line ? panelsInTheWay(map, line) : []), [map, line]);
  if (!line) return null;
  return (
    <fieldset className="wishes" aria-label={wishWords.title} disabled={closingOf(standing) !== null}>
      <TimeLimit />
      {panels.length > 0 ? (
        <section aria-label={wishWords.panels.label}>
          <h2>{wishWords.panels.label}</h2>
          <p className="quiet">{wishWords.panels.hint}</p>
          <ul className="wish-panels">
            {panels.map(({ id, minutesOff }) => (
              <PanelLine key={id} panelId={id} minutesOff={minutesOff} />
            ))}
          </ul>
        </section>
      ) : null}
      <EitherPart />
    </fieldset>
  );
}

function PanelLine({ panelId, minutesOff }: { readonly panelId: PanelId; readonly minutesOff: number }) {
  const { open, session, standing, say } = useFind();
  const id = useId();
  const now = panelStanding(standing, panelId);
  return (
    <li>
      <label htmlFor={id}>{say(nameOf(open.map, panelId))}</label>
      <Figure value={sayMinutes(minutesOff)} unit={findWords.list.minutes} large />
      <select
        id={id}
        className="input select"
        value={now}
        onChange={(event) => session.add(...entriesFor(panelId, now, event.target.value as PanelStanding))}
      >
        {standings.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </li>
  );
}

/** Two panels over the same places of which one is enough; offered only where there are two. */
function EitherPart() {
  const { open, session, standing, say } = useFind();
  const { line, map } = open;
  const [picked, setPicked] = useState('');
  const words = wishWords.either;
  const pairs = useMemo(() => (line ? pairsOverOnePlace(map, line) : []), [map, line]);
  const stand = planWishes(standing).eitherPanels;
  const key = (pair: readonly [PanelId, PanelId]): string => [...pair].sort().join(' ');
  const held = new Set(stand.map(key));
  const free = pairs.filter((pair) => !held.has(key(pair)));
  if (pairs.length + stand.length === 0) return null;
  const said = ([one, other]: readonly [PanelId, PanelId]): string =>
    words.pair(say(nameOf(map, one)), say(nameOf(map, other)));
  const chosen = free.find((pair) => key(pair) === picked) ?? free[0];
  return (
    <section aria-label={words.label}>
      <h2>{words.label}</h2>
      <p className="quiet">{words.hint}</p>
      <ul className="wish-pairs">
        {stand.map((pair) => (
          <li key={key(pair)}>
            <span>{said(pair)}</span>
            <Button
              aria-label={`${words.drop}: ${said(pair)}`}
              onClick={() => session.add({ type: 'either-panel', panelIds: [...pair], either: false })}
            >
              {words.drop}
            </Button>
          </li>
        ))}
      </ul>
      {chosen ? (
        <div className="wish-either">
          <Select
            label={words.choose}
            value={key(chosen)}
            options={free.map((pair) => ({ value: key(pair), label: said(pair) }))}
            onChange={setPicked}
          />
          <Button onClick={() => session.add({ type: 'either-panel', panelIds: [...chosen], either: true })}>
            {words.add}
          </Button>
        </div>
      ) : null}
    </section>
  );
}
