import { useId, useState } from 'react';
import { planWishes } from '#core/job/plan-wishes.ts';
import { toldWords } from '../../language/told.ts';
import { wishWords } from '../../language/wishes.ts';
import { Sign } from '../../parts/index.ts';
import { useFind } from './find-context.ts';
import { KnownPanel } from './known/known-panel.tsx';
import { WishPanel } from './wishes/wish-panel.tsx';

type Tool = 'known' | 'wishes';

/** Two things that shape the order, each opened on demand: what is known beforehand, and what is wished. */
export function OrderTools({ onIntake }: { readonly onIntake: () => void }) {
  const { open, standing } = useFind();
  const [shown, setShown] = useState<Tool | null>(null);
  const id = useId();
  if (!open.line) return null;
  const { recentWork = [], symptoms = [] } = open.job;
  const { notToday, comingOutAnyway, eitherPanels, timeBoxMinutes, usePastJobs } = planWishes(standing);
  const answers = recentWork.length + symptoms.length;
  const wished =
    notToday.length + comingOutAnyway.length + eitherPanels.length + (timeBoxMinutes === undefined ? 0 : 1);
  const past = usePastJobs
    ? open.past && open.past.all.jobs > 0
      ? toldWords.withPast
      : null
    : toldWords.withoutPast;
  const known = [answers > 0 ? toldWords.answers(answers) : null, past].filter((each) => each !== null);
  const tools = [
    { tool: 'known', title: toldWords.title, state: known.length > 0 ? known.join(', ') : toldWords.none },
    { tool: 'wishes', title: wishWords.title, state: wished === 0 ? wishWords.none : wishWords.some(wished) },
  ] as const;
  return (
    <div className="order-tools">
      <div className="order-tools-row">
        {tools.map(({ tool, title, state }) => (
          <button
            key={tool}
            type="button"
            className="order-tool"
            aria-expanded={shown === tool}
            aria-controls={id}
            onClick={() => setShown(shown === tool ? null : tool)}
          >
            <span>
              <b>{title}</b>
              <span className="quiet">{state}</span>
            </span>
            <Sign name={shown === tool ? 'up' : 'down'} size={18} />
          </button>
        ))}
      </div>
      <div id={id} className="order-tool-body" hidden={shown === null}>
        {shown === 'known' ? <KnownPanel onIntake={onIntake} /> : null}
        {shown === 'wishes' ? <WishPanel /> : null}
      </div>
    </div>
  );
}
