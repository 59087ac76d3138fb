import { foundLook } from '#core/job/evidence-entries.ts';
import { type OpeningMove, whatChanged } from '#core/job/rank-change.ts';
import type { DigStep } from '#core/job/ranking.ts';
import { findWords, sayMinutes } from '../../language/find.ts';
import { nameOf } from '../../language/name-of.ts';
import { Figure } from '../../parts/index.ts';
import { useFind } from './find-context.ts';

const mostNamed = 2;

/** What the last change did to the order, in one line that is also read aloud; before any, how long it may take. */
export function WhatChanged() {
  const view = useFind();
  const { ranking, rankingBefore, map, thinking } = view.open;
  const shortName = (step: DigStep): string => {
    const last = step.takeOff.at(-1) ?? step.look.nodeIds?.[0];
    if (last) return view.say(nameOf(map, last));
    const run = step.look.segmentIds[0];
    return run ? view.say(nameOf(map, run)) : '';
  };
  const names = (moves: readonly OpeningMove[]): string =>
    [...new Set(moves.map(({ step }) => shortName(step)))].slice(0, mostNamed).join('; ');
  const found = foundLook(view.standing) !== null;
  const sentences: string[] = [];
  if (ranking && rankingBefore && !found) {
    const change = whatChanged(rankingBefore, ranking);
    const [was, is] = [rankingBefore.digPlan[0], ranking.digPlan[0]];
    if (was && is && !sameLook(was, is)) sentences.push(findWords.changed.first(shortName(is)));
    if (change.movedUp.length > 0) sentences.push(findWords.changed.up(names(change.movedUp)));
    if (change.movedDown.length > 0) sentences.push(findWords.changed.down(names(change.movedDown)));
    if (change.gone.length > 0) sentences.push(findWords.changed.gone(names(change.gone)));
    if (change.added.length > 0) sentences.push(findWords.changed.came(names(change.added)));
    if (sentences.length === 0) sentences.push(findWords.changed.same);
  }
  return (
    <p className="what-changed" role="status" aria-live="polite" data-thinking={thinking}>
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

const sameLook = (a: DigStep, b: DigStep): boolean =>
  Math.abs(a.look.fromMm - b.look.fromMm) < 1 && Math.abs(a.look.toMm - b.look.toMm) < 1;
