import { useEffect, useState } from 'react';
import type { Intake } from '#core/job/job-document.ts';
import type { Circuit } from '#core/map/records.ts';
import type { JobId } from '#core/quantity/id.ts';
import type { Problem } from '#core/quantity/problem.ts';
import type { MapSummary } from '#electron/contract/contract.ts';
import { intakeWords } from '../../language/intake.ts';
import { startWords } from '../../language/start.ts';
import { words } from '../../language/words.ts';
import { ProblemNotice, Progress } from '../../parts/index.ts';
import { hostClient } from '../../session/host.ts';
import { emptyIntake, IntakeForm } from '../intake/intake-form.tsx';

/** The intake form for a new job on one map; opens the job when it is made. */
export function NewJob({
  map,
  onOpenJob,
  onCancel,
}: {
  readonly map: MapSummary;
  readonly onOpenJob: (jobId: JobId) => void;
  readonly onCancel: () => void;
}) {
  const [circuits, setCircuits] = useState<readonly Circuit[] | null>(null);
  const [problem, setProblem] = useState<Problem | null>(null);
  useEffect(() => {
    let current = true;
    void hostClient()('map.open', { mapId: map.id }).then((opened) => {
      if (!current) return;
      if (opened.ok) setCircuits([...opened.value.map.circuits].sort((a, b) => a.order - b.order));
      else setProblem(opened.problem);
    });
    return () => {
      current = false;
    };
  }, [map.id]);
  const send = async (intake: Intake): Promise<Problem | null> => {
    const made = await hostClient()('job.create', { mapId: map.id, ...intake });
    if (!made.ok) return made.problem;
    onOpenJob(made.value.jobId);
    return null;
  };
  if (!circuits) return problem ? <ProblemNotice problem={problem} /> : <Progress label={words.opening} />;
  return (
    <IntakeForm
      title={startWords.newJob(map.name)}
      sendLabel={intakeWords.start}
      first={{
        ...emptyIntake,
        vehicle: { ...emptyIntake.vehicle, odometerUnit: map.driveSide === 'right' ? 'mi' : 'km' },
      }}
      circuits={circuits}
      draft={[map.id, 'new job']}
      onSend={send}
      onCancel={onCancel}
    />
  );
}
