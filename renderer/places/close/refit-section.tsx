import { panelsToRefit } from '#core/job/panels-to-refit.ts';
import type { Caution } from '#core/map/kinds.ts';
import { closeWords } from '../../language/close.ts';
import { cautionSentences, findWords, grave, sayMinutes } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { cautionWords } from '../../language/words.ts';
import { Button, Figure, Notice } from '../../parts/index.ts';
import { CautionSigns, cautionSigns } from '../find/caution-signs.tsx';
import { useFind } from '../find/find-context.ts';
import { Section } from './section.tsx';
import './refit.css';

const words = closeWords.refit;

/** What goes back on, last off first, with the cautions at each. */
export function RefitSection() {
  const { open, standing, session, say, cautionsRead } = useFind();
  const panels = panelsToRefit(open.map, standing);
  const airbag = standing.some(
    (entry) =>
      entry.type === 'panel-off' &&
      (open.map.panels.get(entry.panelId)?.cautions ?? []).some((each) => grave.has(each)),
  );
  return (
    <Section number={5} title={closeWords.sections.refit} done={panels.length === 0}>
      {panels.length === 0 ? <p className="quiet">{words.none}</p> : <p className="quiet">{words.loom}</p>}
      <ol className="refit-lines">
        {panels.map((panel) => {
          const name = say(nameOf(open.map, panel.id));
          const unread = panel.cautions.filter((each) => grave.has(each) && !cautionsRead.has(each));
          return (
            <li key={panel.id}>
              <span className="refit-name">
                {name}
                <CautionSigns cautions={panel.cautions} />
              </span>
              <Figure value={sayMinutes(panel.minutesOn)} unit={findWords.list.minutes} large />
              <Button
                large
                aria-label={findWords.refit.backOn(name)}
                disabled={unread.length > 0}
                onClick={() => session.add({ type: 'panel-on', panelId: panel.id })}
              >
                {findWords.refit.on}
              </Button>
              {unread.length > 0 ? <Unread cautions={unread} /> : null}
            </li>
          );
        })}
      </ol>
      {airbag ? (
        <Notice tone="caution" sign="airbag" title={words.cautions}>
          <p>{words.srs}</p>
        </Notice>
      ) : null}
      <p className="quiet">{words.handing}</p>
    </Section>
  );
}

/** Cautions that can hurt are read once in each job, before the part goes back on. */
function Unread({ cautions }: { readonly cautions: readonly Caution[] }) {
  const { session } = useFind();
  return (
    <Notice tone="caution" sign={cautionSigns[cautions[0] as Caution]}>
      {cautions.map((caution) => (
        <p key={caution}>
          <b>{cautionWords[caution]}.</b> {cautionSentences[caution]}
        </p>
      ))}
      <Button
        aria-label={findWords.caution.label(cautions.map((each) => cautionWords[each]).join(', '))}
        onClick={() => session.add({ type: 'caution-read', cautions: [...cautions] })}
      >
        {words.read}
      </Button>
    </Notice>
  );
}
