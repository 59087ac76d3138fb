import { sinceSearch } from '#core/job/job-stage.ts';
import { proofChecklist } from '#core/job/proof-checklist.ts';
import { findProof } from '#core/job/proved-find.ts';
import { isLookOnly } from '#core/map/kinds.ts';
import { findWords } from '../../language/find.ts';
import { ProblemNotice } from '../../parts/index.ts';
import { useFind } from '../find/find-context.ts';
import { useJobKeys } from '../find/use-job-keys.ts';
import { AlongSection } from './along-section.tsx';
import { BenchSheet } from './bench-sheet.tsx';
import { CloseHeader } from './close-header.tsx';
import type { ClosePage } from './close-page.ts';
import { EndSection } from './end-section.tsx';
import { FoundSection } from './found-section.tsx';
import { MoneySection } from './money-section.tsx';
import { ProofSection } from './proof-section.tsx';
import { RefitSection } from './refit-section.tsx';
import { RepairSection } from './repair-section.tsx';
import { ReportSheet } from './report-sheet.tsx';
import './close.css';

/** Keys of the search that mean nothing here; undo and redo do. */
const nothing = (): void => {};

/** The fourth place: from the find to the closed job. */
export function CloseScreen({ page, onLeave }: { readonly page: ClosePage; readonly onLeave: () => void }) {
  const { open, standing, session } = useFind();
  useJobKeys({ session, letGo: nothing, showKeys: nothing, enterReading: nothing });
  const toSearch = (): void => {
    window.location.hash = `#/job/${open.job.id}`;
  };
  if (page === 'report') return <ReportSheet />;
  if (page === 'bench-sheet') return <BenchSheet />;
  const cause = sinceSearch(standing, 'finding').findLast(({ result }) => result === 'proved-cause') ?? null;
  const items = open.line ? proofChecklist(open.map, open.line, standing) : [];
  const duty = open.line?.circuit.duty;
  const proved = cause !== null && findProof(standing, cause.id, isLookOnly(duty)) === 'proved';
  const repaired = standing.some(
    (entry) =>
      entry.type === 'repair' &&
      entry.findingId === cause?.id &&
      (entry.cures.length > 0 || cause.partNodeId !== undefined),
  );
  return (
    <div className="close">
      <CloseHeader onLeave={onLeave} onSearch={toSearch} />
      <main className="close-main">
        {open.saveProblem ? (
          <ProblemNotice problem={open.saveProblem} title={findWords.failed.saving} />
        ) : null}
        <div className="close-columns">
          <FoundSection done={proved} />
          <RepairSection done={repaired} />
          <AlongSection cause={cause} />
          <ProofSection items={items} cause={cause} onSearchOn={toSearch} />
          <RefitSection />
          <MoneySection />
          <EndSection onSearchOn={toSearch} />
        </div>
      </main>
    </div>
  );
}
