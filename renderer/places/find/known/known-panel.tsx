import { closingOf } from '#core/job/job-stage.ts';
import { planWishes } from '#core/job/plan-wishes.ts';
import type { Ranking, Told } from '#core/job/ranking.ts';
import { sayPercent } from '../../../language/find.ts';
import { nameOf } from '../../../language/name-of.ts';
import { sayDistance } from '../../../language/say-length.ts';
import { answerWord, historySentence, toldWords } from '../../../language/told.ts';
import { Button, Checkbox } from '../../../parts/index.ts';
import { useFind } from '../find-context.ts';
import { shortName } from '../step-title.ts';
import { mostRaised } from './opening-told.ts';

/** Causes that past jobs moved, said in the summary. */
const mostEffects = 4;

/** What is known before the first reading, what it does to the order, and the switch that leaves past jobs out. */
export function KnownPanel({ onIntake }: { readonly onIntake: () => void }) {
  const { open } = useFind();
  return (
    <div className="known">
      <PastPart />
      <IntakePart onIntake={onIntake} answered={open.ranking?.told?.answers ?? []} />
      <section aria-label={toldWords.firm.label}>
        <h2>{toldWords.firm.label}</h2>
        <p className="quiet">{toldWords.firm.hint}</p>
      </section>
    </div>
  );
}

function PastPart() {
  const { open, session, standing, say } = useFind();
  const { past, ranking, map } = open;
  const words = toldWords.past;
  const { usePastJobs } = planWishes(standing);
  const closed = closingOf(standing) !== null;
  const effects = ranking?.told?.pastJobs?.effects ?? [];
  const counted = past && past.all.jobs > 0;
  return (
    <section aria-label={words.label}>
      <h2>{words.label}</h2>
      <Checkbox
        label={words.use}
        checked={usePastJobs}
        disabled={closed}
        onChange={(use) => session.add({ type: 'past-jobs', use })}
      />
      <p className="quiet">
        {counted ? words.count(past.onMap.jobs, past.all.jobs) : past ? words.empty : words.failed}
      </p>
      {usePastJobs && counted && ranking?.told ? (
        effects.length > 0 ? (
          <>
            <ul className="known-lines">
              {effects.slice(0, mostEffects).map((effect) => (
                <li key={`${effect.cause} ${effect.thing}`}>
                  {historySentence(effect, (id) => say(nameOf(map, id)))}
                </li>
              ))}
            </ul>
            <p className="quiet">{words.hint}</p>
          </>
        ) : (
          <p className="quiet">{words.small}</p>
        )
      ) : null}
    </section>
  );
}

type Answered = NonNullable<Ranking['told']>['answers'];

function IntakePart({ answered, onIntake }: { readonly answered: Answered; readonly onIntake: () => void }) {
  const { open } = useFind();
  const words = toldWords.intake;
  const { recentWork, symptoms } = open.job;
  const asked = recentWork !== undefined || symptoms !== undefined;
  return (
    <section aria-label={words.label}>
      <h2>{words.label}</h2>
      {answered.length > 0 ? (
        <ul className="known-lines">
          {answered.map((answer) => (
            <li key={answer.word}>
              <b>{answerWord(answer.word)}</b>: <AnswerEffect answer={answer} />
            </li>
          ))}
        </ul>
      ) : (
        <p className="quiet">{asked ? words.nothing : words.nobody}</p>
      )}
      <Button onClick={onIntake}>{words.change}</Button>
    </section>
  );
}

function AnswerEffect({ answer: { word, lengthMm } }: { readonly answer: Answered[number] }) {
  const { open, lengths, say } = useFind();
  const { ranking, map } = open;
  if (lengthMm === 0 || !ranking) return toldWords.intake.nowhere;
  const moved = mostRaised(ranking, word satisfies Told);
  if (!moved) {
    const { value, unit } = sayDistance(lengthMm, lengths);
    return toldWords.intake.everywhere(`${value} ${unit}`);
  }
  const { step, without } = moved;
  const name = shortName(step, (id) => say(nameOf(map, id)));
  return toldWords.mostRaised(name, sayPercent(without), sayPercent(step.probability));
}
