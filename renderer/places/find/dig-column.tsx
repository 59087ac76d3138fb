import { useEffect, useState } from 'react';
import { foundLook } from '#core/job/evidence-entries.ts';
import { findWords } from '../../language/find.ts';
import { readingWords } from '../../language/readings.ts';
import { ProblemNotice, Progress, Tabs } from '../../parts/index.ts';
import { circuitRanges } from '../../session/stretches-between.ts';
import { DigList } from './dig-list.tsx';
import { useFind } from './find-context.ts';
import { FoundPanel } from './found-panel.tsx';
import { LeftOut } from './left-out.tsx';
import { NothingToRank } from './nothing-to-rank.tsx';
import { OrderTools } from './order-tools.tsx';
import { PickedBar } from './picked-bar.tsx';
import { ReadingsLedger } from './readings/readings-ledger.tsx';
import { RecordList } from './record-list.tsx';
import { StretchList } from './stretch-list.tsx';
import { DutyNotice, Warnings } from './warnings.tsx';
import { WhatChanged } from './what-changed.tsx';

type Page = 'list' | 'readings' | 'stretches' | 'record';

/** Beside the board: where to open first, or that the cause is found; the stretches; the record. */
export function DigColumn({
  onOpenMap,
  onIntake,
  onAnother,
}: {
  readonly onOpenMap: () => void;
  readonly onIntake: () => void;
  readonly onAnother: () => void;
}) {
  const { open, standing } = useFind();
  const [page, setPage] = useState<Page>('list');
  const found = foundLook(standing);
  const foundId = found?.id;
  useEffect(() => {
    // A cause proved from any page is answered on the first one.
    if (foundId) setPage('list');
  }, [foundId]);
  const { line } = open;
  const readings = standing.filter((entry) => entry.type === 'reading').length;
  const foundPieces = found && line ? found.stretches.flatMap((stretch) => circuitRanges(line, stretch)) : [];
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
                <OrderTools onIntake={onIntake} />
                <LeftOut />
                <NothingToRank onOpenMap={onOpenMap} />
                {open.thinking && !open.ranking ? <Progress label={findWords.thinking} /> : null}
                <DigList />
                <Warnings />
              </>
            ),
          },
          { key: 'readings', label: readingWords.tab(readings), content: <ReadingsLedger /> },
          { key: 'stretches', label: findWords.list.stretches, content: <StretchList /> },
          { key: 'record', label: findWords.list.record, content: <RecordList /> },
        ]}
      />
    </aside>
  );
}
