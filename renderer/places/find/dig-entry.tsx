import { useState } from 'react';
import { openBecause } from '#core/job/open-because.ts';
import type { DigStep } from '#core/job/ranking.ts';
import { stepCautions } from '#core/job/step-cautions.ts';
import { findWords, sayMinutes, sayPercent } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { worthSentence } from '../../language/reasons.ts';
import { whereLine } from '../../language/say-where.ts';
import { Figure, ReasonList } from '../../parts/index.ts';
import { CautionSigns } from './caution-signs.tsx';
import { useFind } from './find-context.ts';
import { openingTold } from './known/opening-told.ts';
import { lookPieces, overlap } from './look-pieces.ts';
import { OpeningStanding } from './opening-standing.tsx';
import { StepCautions } from './step-cautions.tsx';
import { stepTitle } from './step-title.ts';
import { TakeOff } from './take-off.tsx';
import { Verdict } from './verdict.tsx';
import { Where } from './where.tsx';

const words = findWords.list;
/** More reasons than these would push what is pressed out of sight. */
const mostReasons = 3;

/** One opening: what comes off, what is then in view, how likely the fault is there, and why. */
export function DigEntry({
  step,
  expanded,
  onToggle,
}: {
  readonly step: DigStep;
  readonly expanded: boolean;
  readonly onToggle: () => void;
}) {
  const view = useFind();
  const [text, setText] = useState(false);
  const { map, ranking, line } = view.open;
  const told = ranking ? openingTold(step, ranking) : [];
  const pieces = lookPieces(step);
  const pointed = view.pointed.some((piece) => pieces.some((own) => overlap(own, piece)));
  const where = pieces.map(view.where);
  const because = line ? openBecause(line, step, view.standing) : 'off-now';
  const title = stepTitle(step, (id) => view.say(nameOf(map, id)), because);
  const panels = step.takeOff.map((id) => map.panels.get(id)).filter((panel) => panel !== undefined);
  const plugs = step.look.nodeIds ?? [];
  const worth = worthSentence(step.reason);
  const cautions = line ? stepCautions(map, line.circuit, step.takeOff, plugs) : [];
  return (
    <li
      className={`dig-entry${pointed ? ' dig-entry-pointed' : ''}`}
      data-rank={step.rank}
      onPointerEnter={() => view.point(pieces)}
      onPointerLeave={() => view.point([])}
    >
      <button
        type="button"
        className="dig-head"
        aria-expanded={expanded}
        onClick={onToggle}
        onFocus={() => view.point(pieces)}
        onBlur={() => view.point([])}
      >
        <span className="dig-rank">
          <span className="only-read-aloud">{words.opening} </span>
          {step.rank}
        </span>
        <span className="dig-title">{title}</span>
        <Figure value={sayMinutes(step.minutes)} unit={words.minutes} large />
        <Figure value={sayPercent(step.probability)} unit={words.percent} large />
      </button>
      <div className="dig-body">
        <ul className="dig-where">
          {where.map((place) => (
            <li key={whereLine(place)}>
              <Where place={place} />
            </li>
          ))}
          {plugs.length > 0 && panels.length > 0 ? (
            <li>{words.part(plugs.map((id) => view.say(nameOf(map, id))).join(', '))}</li>
          ) : null}
        </ul>
        <div className="dig-reason">
          {step.reason.secondLook ? null : (
            <ReasonList
              causes={step.reason.causes}
              nameOf={(id) => view.say(nameOf(map, id))}
              lengths={view.lengths}
              most={mostReasons}
              as={expanded ? 'rows' : 'line'}
            />
          )}
          {worth === '' ? null : <p>{worth}</p>}
        </div>
        {told.length > 0 ? (
          <ul className="dig-told">
            {told.map((sentence) => (
              <li key={sentence}>{sentence}</li>
            ))}
          </ul>
        ) : null}
        <OpeningStanding step={step} />
        {expanded ? (
          <>
            <StepCautions cautions={cautions} shown={text} onShow={setText} />
            {panels.length > 0 ? (
              <ol className="take-off" aria-label={words.takeOffFirst}>
                {panels.map((panel) => (
                  <TakeOff key={panel.id} panelId={panel.id} onUnread={() => setText(true)} />
                ))}
              </ol>
            ) : null}
            <Verdict pieces={pieces} plugs={plugs} trim={step.takeOff} about={title} />
          </>
        ) : (
          <CautionSigns cautions={cautions} />
        )}
        <p className="dig-running">
          {words.running} <Figure value={sayMinutes(step.runningMinutes)} unit={words.minutes} />,{' '}
          <Figure value={sayPercent(step.runningProbability)} unit={words.percent} /> {words.runningTotal}
        </p>
      </div>
    </li>
  );
}
