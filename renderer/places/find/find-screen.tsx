import { useState } from 'react';
import type { Intake } from '#core/job/job-document.ts';
import type { JobId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import { findWords } from '../../language/find.ts';
import { intakeWords } from '../../language/intake.ts';
import { words } from '../../language/words.ts';
import { KeyboardSheet } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import { useTheme } from '../../theme/use-theme.ts';
import { emptyIntake, IntakeForm } from '../intake/intake-form.tsx';
import { DigColumn } from './dig-column.tsx';
import { useFind } from './find-context.ts';
import { intakeOf } from './intake-of.ts';
import { JobBoard } from './job-board.tsx';
import { JobHeader } from './job-header.tsx';
import { ReadingEntry } from './readings/reading-entry.tsx';
import { StraightPane } from './straight-pane.tsx';
import { useJobKeys } from './use-job-keys.ts';
import './dig-list.css';
import './found.css';
import './job-header.css';
import './known/known.css';
import './order-tools.css';
import './record.css';
import './step-cautions.css';
import './verdict.css';
import './wishes/wishes.css';
import '../proposals/proposals.css';

type Form = 'change' | 'another';

/** Board, dig list and straight loom, and the header over them. */
export function FindScreen({
  onLeave,
  onOpenMap,
  onOpenJob,
}: {
  readonly onLeave: () => void;
  readonly onOpenMap: () => void;
  readonly onOpenJob: (jobId: JobId) => void;
}) {
  const { open, session, pick, openReading, closeReading } = useFind();
  const theme = useTheme();
  const [form, setForm] = useState<Form | null>(null);
  const [keys, setKeys] = useState(false);
  const send = async (intake: Intake): Promise<Problem | null> => {
    if (form === 'change') {
      const refused = await session.changeIntake(intake);
      if (!refused) setForm(null);
      return refused;
    }
    const made = await hostClient()('job.create', { mapId: open.job.mapId, ...intake });
    if (!made.ok) return made.problem;
    onOpenJob(made.value.jobId);
    return null;
  };
  useJobKeys({
    session,
    letGo: () => {
      pick(null);
      closeReading();
    },
    showKeys: () => setKeys(true),
    enterReading: () => openReading([], null),
  });
  const circuits = [...open.map.circuits.values()].sort((a, b) => a.order - b.order);
  return (
    <div className="find">
      <JobHeader onLeave={onLeave} onIntake={() => setForm('change')} onKeys={() => setKeys(true)} />
      <main className="find-views">
        <div className="find-board">
          {form ? (
            <div className="find-form">
              <IntakeForm
                key={form}
                title={form === 'change' ? intakeWords.changeIntake : intakeWords.newJob}
                sendLabel={form === 'change' ? intakeWords.keep : intakeWords.start}
                first={
                  form === 'change'
                    ? intakeOf(open.job)
                    : {
                        ...emptyIntake,
                        vehicle: { ...emptyIntake.vehicle, odometerUnit: open.job.vehicle.odometerUnit },
                      }
                }
                circuits={circuits}
                draft={form === 'change' ? [open.job.id, 'intake'] : [open.job.mapId, 'new job']}
                onSend={send}
                onCancel={() => setForm(null)}
              />
            </div>
          ) : (
            <>
              <JobBoard key={open.line?.circuit.id ?? ''} theme={theme} />
              <ReadingEntry />
            </>
          )}
        </div>
        {form ? null : <StraightPane />}
        <DigColumn
          onOpenMap={onOpenMap}
          onIntake={() => setForm('change')}
          onAnother={() => setForm('another')}
        />
      </main>
      {keys ? (
        <KeyboardSheet
          label={findWords.keys.label}
          closeLabel={words.close}
          keys={findWords.keys.lines}
          onClose={() => setKeys(false)}
        />
      ) : null}
    </div>
  );
}
