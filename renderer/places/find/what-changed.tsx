import { foundLook } from '#core/job/evidence-entries.ts';
import { moveReason } from '#core/job/move-reason.ts';
import { type OpeningMove, whatChanged } from '#core/job/rank-change.ts';
import type { DigStep } from '#core/job/ranking.ts';
import { findWords, sayMinutes } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { moveWords, toldWords } from '../../language/told.ts';
import { Figure } from '../../parts/index.ts';
import type { ChangeCause } from '../../session/job-session.ts';
import { entryLine } from './entry-line.ts';
import { useFind } from './find-context.ts';
import { takenOutOfOrder } from './order-taken.ts';
import { shortName } from './step-title.ts';

const mostNamed = 2;

/** Longer records of what was done are cut short here; the record has them whole. */
const longestCause = 60;

/**
 * What the last entry did to the order and why, in one line that is also read aloud, and what it lost when the
 * order was not followed; before any, how long it may take.
 */
export function WhatChanged() {
  const view = useFind();
  const { ranking, rankingBefore, changedBy, map, thinking } = view.open;
  const name = (step: DigStep): string => shortName(step, (id) => view.say(nameOf(map, id)));
  const names = (moves: readonly OpeningMove[], why: boolean): string => {
    const said = moves.map((move) => {
      const reason =
        why && ranking && rankingBefore ? moveWords(moveReason(rankingBefore, ranking, move)) : '';
      return { name: name(move.step), reason };
    });
    return said
      .filter((each, i) => said.findIndex((other) => other.name === each.name) === i)
      .slice(0, mostNamed)
      .map((each) => (each.reason === '' ? each.name : `${each.name} (${each.reason})`))
      .join('; ');
  };
  const found = foundLook(view.standing) !== null;
  const sentences: string[] = [];
  if (ranking && rankingBefore && !found) {
    const change = whatChanged(rankingBefore, ranking);
    const [was, is] = [rankingBefore.digPlan[0], ranking.digPlan[0]];
    if (was && is && !sameLook(was, is)) sentences.push(findWords.changed.first(name(is)));
    if (change.movedUp.length > 0) sentences.push(findWords.changed.up(names(change.movedUp, true)));
    if (change.movedDown.length > 0) sentences.push(findWords.changed.down(names(change.movedDown, true)));
    if (change.gone.length > 0) sentences.push(findWords.changed.gone(names(change.gone, false)));
    if (change.added.length > 0) sentences.push(findWords.changed.came(names(change.added, true)));
    if (sentences.length === 0) sentences.push(findWords.changed.same);
    const taken = takenOutOfOrder(rankingBefore, changedBy);
    if (taken?.regretMinutes !== undefined) {
      const { same, costs } = { same: toldWords.regret.takenSame, costs: toldWords.regret.taken };
      sentences.unshift(taken.asGoodAsFirst ? same : costs(sayMinutes(taken.regretMinutes)));
    }
  }
  const after = sentences.length > 0 ? sayCauses(changedBy, (cause) => causeLine(cause, view)) : '';
  return (
    <p className="what-changed" role="status" aria-live="polite" data-thinking={thinking}>
      {after === '' ? null : <span className="quiet">{after}: </span>}
      {sentences.join('. ')}
      {ranking && !found && sentences.length === 0 && ranking.digPlan.length > 0 ? (
        <span className="quiet">
          {findWords.list.expected}{' '}
          <Figure value={sayMinutes(ranking.expectedMinutes)} unit={findWords.list.minutes} />
        </span>
      ) : null}
    </p>
  );
}

/** What was entered between the two orders, in a few words. */
function sayCauses(causes: readonly ChangeCause[], line: (cause: ChangeCause) => string): string {
  const [only] = causes;
  if (!only) return '';
  if (causes.length > 1) return toldWords.afterSome(causes.length);
  const said = line(only);
  return toldWords.after(said.length > longestCause ? `${said.slice(0, longestCause - 1)}…` : said);
}

function causeLine(cause: ChangeCause, view: ReturnType<typeof useFind>): string {
  if (typeof cause === 'string') return toldWords.causes[cause];
  if (cause.type !== 'take-back') return entryLine(cause, view);
  const back = view.open.job.entries.find(({ id }) => id === cause.entryId);
  if (!back) return toldWords.causes['take-back'];
  return back.type === 'take-back'
    ? toldWords.causes.again
    : `${toldWords.causes['take-back']}: ${entryLine(back, view)}`;
}

const sameLook = (a: DigStep, b: DigStep): boolean =>
  Math.abs(a.look.fromMm - b.look.fromMm) < 1 && Math.abs(a.look.toMm - b.look.toMm) < 1;
