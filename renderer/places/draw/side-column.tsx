import { memo, type ReactNode, useEffect, useMemo, useRef } from 'react';
import { readiness } from '#core/map/readiness.ts';
import { drawWords } from '../../language/draw.ts';
import { nameOf } from '../../language/name-of.ts';
import { Notice, ProblemNotice, Tabs } from '../../parts/index.ts';
import { MapProposals } from '../proposals/map-proposals.tsx';
import { Checklist } from './checklist.tsx';
import { DeleteAsk } from './delete-ask.tsx';
import { DetailsPage } from './details-page.tsx';
import { useDraw } from './draw-context.ts';
import { ThingsPage } from './things-page.tsx';

export type SidePage = 'details' | 'things' | 'ready';

/** Beside the board: what is picked, everything there is, and what is still missing. */
export const SideColumn = memo(function SideColumn({
  page,
  onPage,
  asked,
  onSure,
  onKeep,
  note,
  task,
}: {
  readonly page: SidePage;
  readonly onPage: (page: SidePage) => void;
  readonly asked: readonly string[] | null;
  readonly onSure: (ids: readonly string[]) => void;
  readonly onKeep: () => void;
  /** What was just done that the board does not show. */
  readonly note: string | null;
  /** What is done with the whole map, in place of the pages. */
  readonly task: ReactNode;
}) {
  const { map, open, problem } = useDraw();
  const column = useRef<HTMLElement>(null);
  const picked = open.selection.join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: other details begin at their top.
  useEffect(() => {
    if (column.current && page === 'details') column.current.scrollTop = 0;
  }, [picked, page]);
  const items = useMemo(() => readiness(map), [map]);
  const left = items.filter((item) => !item.done).length;
  return (
    <aside ref={column} className="side-column" aria-label={drawWords.pages.label}>
      {problem ? <ProblemNotice problem={problem} nameOf={(id) => nameOf(map, id)} /> : null}
      {asked ? <DeleteAsk ids={asked} onSure={() => onSure(asked)} onKeep={onKeep} /> : null}
      {note ? <Notice>{note}</Notice> : null}
      {task ?? (
        <Tabs
          label={drawWords.pages.label}
          shown={page}
          onShow={onPage}
          pages={[
            { key: 'details', label: drawWords.pages.details, content: <DetailsPage /> },
            { key: 'things', label: drawWords.pages.things, content: <ThingsPage /> },
            {
              key: 'ready',
              label: left > 0 ? `${drawWords.pages.ready} (${left})` : drawWords.pages.ready,
              content: (
                <>
                  <Checklist items={items} />
                  <MapProposals />
                </>
              ),
            },
          ]}
        />
      )}
    </aside>
  );
});
