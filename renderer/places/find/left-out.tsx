import { planWishes } from '#core/job/plan-wishes.ts';
import { sayPercent } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { wishWords } from '../../language/wishes.ts';
import { Button } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

/** What the panels that stay on today hide, each with the button that puts it back into the plan. */
export function LeftOut() {
  const { open, session, standing, say } = useFind();
  const { ranking, map } = open;
  const stayOn = planWishes(standing).notToday;
  if (!ranking || stayOn.length === 0) return null;
  return (
    <section className="left-out" aria-label={wishWords.stayOn.label}>
      <p>{wishWords.leftOut(sayPercent(ranking.chanceLeftOut ?? 0))}</p>
      <div className="left-out-panels">
        {stayOn.map((panelId) => (
          <Button
            key={panelId}
            aria-label={wishWords.panels.asPlannedFor(say(nameOf(map, panelId)))}
            onClick={() => session.add({ type: 'panel-wish', panelId, wish: 'as-planned' })}
          >
            {wishWords.stayOn.back(say(nameOf(map, panelId)))}
          </Button>
        ))}
      </div>
    </section>
  );
}
