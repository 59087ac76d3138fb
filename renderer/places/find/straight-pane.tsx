import { useMemo } from 'react';
import { foundLook } from '#core/job/evidence-entries.ts';
import type { EntryId } from '#core/quantity/id.ts';
import { findWords, sayPercent } from '../../language/find.ts';
import { whereLine } from '../../language/say-where.ts';
import { circuitRanges } from '../../session/stretches-between.ts';
import { straightPicture } from '../../straight/straight-picture.ts';
import { StraightView } from '../../straight/straight-view.tsx';
import { ClassBar } from './class-bar.tsx';
import { useFind } from './find-context.ts';
import { openingRanks } from './opening-ranks.ts';
import { evidenceBars } from './readings/evidence-bars.ts';

/** The searched circuit laid straight below the board. */
export function StraightPane() {
  const view = useFind();
  const { open, standing } = view;
  const { line, map, ranking } = open;
  const picture = useMemo(() => (line ? straightPicture(map, line, standing) : null), [map, line, standing]);
  const ranks = useMemo(() => (ranking ? openingRanks(ranking).peaks : []), [ranking]);
  if (!picture || !line) return null;
  const found = foundLook(standing);
  const foundRanges = found ? found.stretches.flatMap((stretch) => circuitRanges(line, stretch)) : [];
  const longest = [...foundRanges].sort((a, b) => b.toMm - b.fromMm - (a.toMm - a.fromMm))[0];
  return (
    <section className="straight-pane" aria-label={findWords.straight.label}>
      <ClassBar />
      <StraightView
        evidence={evidenceBars(view)}
        pointedEvidence={view.pointedEntry}
        onPointEvidence={(bar) => view.point(bar.pieces, bar.key as EntryId)}
        picture={picture}
        ranking={ranking}
        ranks={ranks}
        pointed={view.pointed}
        picked={view.picked}
        foundMm={longest ? (longest.fromMm + longest.toMm) / 2 : null}
        lengths={view.lengths}
        say={view.say}
        sayStretch={(piece) => {
          const chance = 'probability' in piece ? Number(piece.probability) : null;
          const words = whereLine(view.where(piece));
          return chance === null
            ? words
            : `${words}, ${findWords.straight.chanceOf(`${sayPercent(chance)} ${findWords.list.percent}`)}`;
        }}
        onPoint={(stretch) => view.point(stretch ? [stretch] : [])}
        onPick={view.pick}
      />
    </section>
  );
}
