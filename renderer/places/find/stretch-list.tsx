import type { StretchProbability } from '#core/job/ranking.ts';
import { findWords, sayPercent } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { whereLine } from '../../language/say-where.ts';
import { Figure, List } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

/** The board and the laid-straight view in words: every stretch in order, each to be picked. */
export function StretchList() {
  const view = useFind();
  const stretches = view.open.ranking?.posterior.stretches ?? [];
  return (
    <List
      label={findWords.stretchList.label}
      items={stretches}
      keyOf={(stretch) => `${stretch.fromMm}`}
      empty={findWords.straight.nothing}
      ordered
    >
      {(stretch: StretchProbability) => {
        const place = whereLine(view.where(stretch));
        return (
          <button
            type="button"
            className="stretch-line"
            onClick={() => view.pick(stretch)}
            onFocus={() => view.point([stretch])}
            onPointerEnter={() => view.point([stretch])}
            onPointerLeave={() => view.point([])}
          >
            <span>
              {view.say(nameOf(view.open.map, stretch.segmentId))}
              <span className="quiet"> {place}</span>
            </span>
            <Figure value={sayPercent(stretch.probability)} unit={findWords.list.percent} large />
          </button>
        );
      }}
    </List>
  );
}
