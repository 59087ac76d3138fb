import { planWishes } from '#core/job/plan-wishes.ts';
import type { PanelId } from '#core/quantity/id.ts';
import { findWords, grave, sayMinutes } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { wishWords } from '../../language/wishes.ts';
import { Button, Figure } from '../../parts/index.ts';
import { CautionSigns } from './caution-signs.tsx';
import { useFind } from './find-context.ts';

const words = findWords.list;

/**
 * One panel to take off, with its minutes, its signs, the button that ticks it off and the one that leaves it
 * on for today. While a caution that can hurt is unread, the first opens its text instead.
 */
export function TakeOff({ panelId, onUnread }: { readonly panelId: PanelId; readonly onUnread: () => void }) {
  const { open, session, standing, say, cautionsRead } = useFind();
  const panel = open.map.panels.get(panelId);
  if (!panel) return null;
  const name = say(nameOf(open.map, panelId));
  const anyway = planWishes(standing).comingOutAnyway.includes(panelId);
  const unread = panel.cautions.some((caution) => grave.has(caution) && !cautionsRead.has(caution));
  return (
    <li>
      <span className="take-off-name">
        {name}
        <CautionSigns cautions={panel.cautions} signsOnly />
      </span>
      {anyway ? (
        <span className="take-off-anyway">{wishWords.panels.anyway}</span>
      ) : (
        <Figure value={sayMinutes(panel.minutesOff)} unit={words.minutes} large />
      )}
      <Button
        aria-label={words.markOff(name)}
        title={unread ? findWords.caution.first : undefined}
        onClick={() => (unread ? onUnread() : session.add({ type: 'panel-off', panelId }))}
      >
        {words.off}
      </Button>
      <Button
        weight="quiet"
        aria-label={wishWords.panels.notTodayFor(name)}
        onClick={() => session.add({ type: 'panel-wish', panelId, wish: 'stays-on' })}
      >
        {wishWords.panels.notToday}
      </Button>
    </li>
  );
}
