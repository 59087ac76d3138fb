import { useEffect, useState } from 'react';
import { findWords } from '../../language/find.ts';
import { ProblemNotice, Progress, Tabs } from '../../parts/index.ts';
import { circuitRanges } from '../../session/stretches-between.ts';
import { DigList } from './dig-list.tsx';
import { useFind } from './find-context.ts';
import { FoundPanel } from './found-panel.tsx';
import { NothingToRank } from './nothing-to-rank.tsx';
import { PickedBar } from './picked-bar.tsx';
import { RecordList } from './record-list.tsx';
import { StretchList } from './stretch-list.tsx';
import { DutyNotice, Warnings } from './warnings.tsx';
import { WhatChanged } from './what-changed.tsx';

type Page = 'list' | 'stretches' | 'record';

/** Beside the board: where to open first, or that the cause is found; the stretches; the record. */
export function DigColumn({
  onOpenMap,
  onAnother,
}: {
  readonly onOpenMap: () => void;
  readonly onAnother: () => void;
}) {
  const { open, standing } = useFind();
  const [page, setPage] = useState<Page>('list');
  const found = standing.findLast((entry) => entry.type === 'inspection' && entry.result === 'found');
  const foundId = found?.id;
  useEffect(() => {
    // A cause proved from any page is answered on the first one.
    if (foundId) setPage('list');
  }, [foundId]);
  const { line } = open;
  const foundPieces =
    found?.type === 'inspection' && line
      ? found.stretches.flatMap((stretch) => circuitRanges(line, stretch))
      : [];
  return (
    <aside className="dig-column" aria-label={findWords.list.label}>
      {open.saveProblem ? <ProblemNotice problem={open.saveProblem} title={findWords.failed.saving} /> : null}
      <PickedBar />
      <WhatChanged />
      <Tabs<Page>
        label={findWords.place}
        shown={page}
        onShow={setPage}
        pages={[
          {
            key: 'list',
            label: findWords.list.label,
            content: found ? (
              <FoundPanel pieces={foundPieces} entryId={found.id} onAnother={onAnother} />
            ) : (
              <>
                <DutyNotice />
                <NothingToRank onOpenMap={onOpenMap} />
                {open.thinking && !open.ranking ? <Progress label={findWords.thinking} /> : null}
                <DigList />
                <Warnings />
              </>
            ),
          },
          { key: 'stretches', label: findWords.list.stretches, content: <StretchList /> },
          { key: 'record', label: findWords.list.record, content: <RecordList /> },
        ]}
      />
    </aside>
  );
}
